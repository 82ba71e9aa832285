namespace AirColumn.Workshop;

/// <summary>What to mind at one step.</summary>
/// <param name="Step">The step.</param>
/// <param name="Title">The step in a word or two.</param>
/// <param name="Text">The caution, one to a few short sentences.</param>
public sealed record Caution(CautionStep Step, string Title, string Text);
