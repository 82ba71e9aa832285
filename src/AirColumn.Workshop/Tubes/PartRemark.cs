namespace AirColumn.Workshop.Tubes;

/// <summary>A remark on one part of a tube: it may leak, tear, or be a mistake. Immutable.</summary>
/// <param name="Part">The index of the part in <see cref="TubeAssembly.Parts"/>: 0 is at the blown end.</param>
/// <param name="Text">A sentence or two that name the part.</param>
public sealed record PartRemark(int Part, string Text);
