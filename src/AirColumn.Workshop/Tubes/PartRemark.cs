namespace AirColumn.Workshop.Tubes;

/// <summary>Something to mind about one part of a tube: it may leak, tear, or not be what was meant. Immutable.</summary>
/// <param name="Part">Which part: its place in <see cref="TubeAssembly.Parts"/>, 0 at the blown end.</param>
/// <param name="Text">A sentence or two that name the part.</param>
public sealed record PartRemark(int Part, string Text);
