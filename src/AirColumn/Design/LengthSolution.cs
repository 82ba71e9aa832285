using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>The result of a search for a length. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<LengthSolution>))]
public sealed record LengthSolution : IJsonAnswer
{
    internal LengthSolution() { }

    /// <summary>The question that was asked.</summary>
    public required LengthQuestion Question { get; init; }

    /// <summary>The outcome of the search.</summary>
    public required SolveStatus Status { get; init; }

    /// <summary>True if <see cref="Length"/> meets the target.</summary>
    public bool IsSolved => Status == SolveStatus.Solved;

    /// <summary>The length of the section, or of all sections together. If <see cref="IsSolved"/> is false: the nearest length tried.</summary>
    public required Length Length { get; init; }

    /// <summary>
    /// The nearest lengths tried on either side of the target: the resonance is sharp at the shorter length and flat at the longer. Null if
    /// no length was tried on one of the sides.
    /// </summary>
    public required LengthBracket? Bracket { get; init; }

    /// <summary>The column with that length. Its resonances carry the cautions about its model: <c>Column.FirstResonances(1).Warnings</c>.</summary>
    public required Column Column { get; init; }

    /// <summary>The frequency of the resonance; zero if the column has none.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>The distance from the target to the resonance, cents; positive is sharp. NaN if there is no resonance.</summary>
    public required double ResidualCents { get; init; }

    /// <summary>
    /// Change of the resonance in cents per millimetre added to the sections, at that length; negative if a longer section is flatter. NaN if no
    /// length was found.
    /// </summary>
    public required double CentsPerMillimetre { get; init; }

    /// <summary>The number of lengths tried.</summary>
    public required int Evaluations { get; init; }

    /// <summary>One sentence: the length found, or the reason why none was found.</summary>
    public required string Explanation { get; init; }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.WriteBoolean("isSolved", IsSolved);
        json.WriteString("status", Status.ToString());
        json.Number("lengthMetres", Length.Meters);
        json.Number("frequencyHz", Frequency.Hertz);
        json.Number("residualCents", ResidualCents);
        json.Number("centsPerMillimetre", CentsPerMillimetre);
        json.WriteString("explanation", Explanation);
    }

    /// <summary><see cref="Explanation"/>.</summary>
    /// <returns>The explanation.</returns>
    public override string ToString() => Explanation;
}

/// <summary>Two lengths with the solution between them.</summary>
/// <param name="Shorter">The length at which the resonance is sharp.</param>
/// <param name="Longer">The length at which the resonance is flat.</param>
public readonly record struct LengthBracket(Length Shorter, Length Longer);
