namespace AirColumn.Workshop;

/// <summary>A caution for one step of the work.</summary>
/// <param name="Step">The step.</param>
/// <param name="Title">The step in a word or two.</param>
/// <param name="Text">The caution, in one or more short sentences.</param>
public sealed record Caution(CautionStep Step, string Title, string Text)
{
    /// <summary>The source of the figures in the text, or "common practice".</summary>
    public string Source { get; init; } = "common practice";
}
