using AirColumn.Acoustics;
using UnitsNet;

namespace AirColumn.Design;

/// <summary>What a search for a length found. Immutable.</summary>
public sealed record LengthSolution
{
    internal LengthSolution() { }

    /// <summary>How the search ended.</summary>
    public required SolveStatus Status { get; init; }

    /// <summary>Whether <see cref="Length"/> meets the target.</summary>
    public bool IsSolved => Status == SolveStatus.Solved;

    /// <summary>The section's length; where <see cref="IsSolved"/> is false the nearest that was tried.</summary>
    public required Length Length { get; init; }

    /// <summary>The column with that length.</summary>
    public required Column Column { get; init; }

    /// <summary>Its first resonance; zero where it showed none.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>The first resonance against the target, cents; positive is sharp. NaN where there is no resonance.</summary>
    public required double ResidualCents { get; init; }

    /// <summary>
    /// Change of the first resonance in cents per millimetre added to the section, at that length: negative where longer
    /// is flatter. NaN where not solved.
    /// </summary>
    public required double CentsPerMillimetre { get; init; }

    /// <summary>How many lengths were tried.</summary>
    public required int Evaluations { get; init; }

    /// <summary>One sentence: what was found, or why nothing was.</summary>
    public required string Explanation { get; init; }
}
