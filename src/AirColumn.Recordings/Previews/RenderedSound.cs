namespace AirColumn.Recordings.Previews;

/// <summary>Samples for the ear, their loudness in Pa, and what to know of them.</summary>
internal sealed record RenderedSound(double[] Samples, double RootMeanSquare, IReadOnlyList<string> Warnings);
