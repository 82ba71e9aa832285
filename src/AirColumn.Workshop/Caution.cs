namespace AirColumn.Workshop;

/// <summary>How not to be hurt at one step.</summary>
/// <param name="Step">The step.</param>
/// <param name="Title">The step in a word or two.</param>
/// <param name="Text">The caution, in one or more short sentences.</param>
public sealed record Caution(CautionStep Step, string Title, string Text)
{
    /// <summary>Where its figures come from, or "common practice".</summary>
    public string Source { get; init; } = "common practice";
}
