namespace AirColumn.Studies;

/// <summary>A number in each row of a study.</summary>
/// <param name="Name">Its name, with the unit at its end, such as f1_hz: lower-case letters, digits and underscores.</param>
/// <param name="Unit">The unit, as people write it; empty for a plain number.</param>
/// <param name="Meaning">Its meaning.</param>
public sealed record StudyField(string Name, string Unit, string Meaning);
