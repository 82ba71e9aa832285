namespace AirColumn.Tables;

/// <summary>Lists of computed numbers in the engine's source, and how to compute them.</summary>
/// <param name="Name">What the command line calls it; several may share a name.</param>
/// <param name="File">Under src/AirColumn/Acoustics.</param>
/// <param name="Lists">Names of the lists in that file, or of a constant, which counts as a list of one number.</param>
/// <param name="Count">How many numbers each list has.</param>
/// <param name="Entry">Computes the numbers at one index, one for each list.</param>
/// <param name="Format">How they are written.</param>
/// <param name="Error">The largest error of a computed number.</param>
internal sealed record Table(
    string Name,
    string File,
    string[] Lists,
    int Count,
    Func<int, double[]> Entry,
    string Format,
    double Error
);
