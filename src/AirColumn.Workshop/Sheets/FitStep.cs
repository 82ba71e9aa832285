namespace AirColumn.Workshop.Sheets;

/// <summary>One step of putting a tube together.</summary>
/// <param name="Part">Which part of the assembly it is about.</param>
/// <param name="Text">What to do.</param>
/// <param name="Uses">Which cut it uses.</param>
/// <param name="Picture">What it looks like, not to scale.</param>
/// <param name="Remarks">What else is to be known.</param>
internal sealed record FitStep(
    int Part,
    string Text,
    string Uses,
    Drawing Picture,
    IReadOnlyList<string> Remarks
);
