using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>The best shape that a search found. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<ShapeSolution>))]
public sealed record ShapeSolution : IJsonAnswer
{
    internal ShapeSolution() { }

    /// <summary>The outcome of the search.</summary>
    public required SolveStatus Status { get; init; }

    /// <summary>True if all targets are met.</summary>
    public bool IsSolved => Status == SolveStatus.Solved;

    /// <summary>The column of that shape. If none of the values tried make a bore: the column that the search began with.</summary>
    public required Column Column { get; init; }

    /// <summary>The variables, each with the chosen value in the unit of its parameter.</summary>
    public required IReadOnlyList<ChosenValue> Values { get; init; }

    /// <summary>
    /// The targets, each with the amount by which it was missed, in cents, tenths of a decibel or tenths of a millimetre; NaN if the column has no
    /// such resonance.
    /// </summary>
    public required IReadOnlyList<TargetError> Errors { get; init; }

    /// <summary>The outcome of each start, in order.</summary>
    public required IReadOnlyList<ShapeStart> Starts { get; init; }

    /// <summary>The number of shapes whose resonances were computed, from all starts.</summary>
    public int Evaluations => Starts.Sum(start => start.Evaluations);

    /// <summary>One sentence: the result, or the reason why the targets are not met.</summary>
    public required string Explanation { get; init; }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.WriteBoolean("isSolved", IsSolved);
        json.WriteString("status", Status.ToString());
        json.Objects(
            "values",
            Values,
            chosen =>
            {
                json.WriteString("parameter", chosen.Variable.Parameter.ToString());
                json.WriteString("unit", chosen.Variable.Parameter.Unit);
                json.Number("value", chosen.Value);
                json.WriteBoolean("isAtBound", chosen.IsAtBound);
            }
        );
        json.Objects(
            "targets",
            Errors,
            missed =>
            {
                json.WriteString("target", missed.Target.ToString());
                json.Number("error", missed.Error);
            }
        );
        json.WriteString("explanation", Explanation);
    }

    /// <summary><see cref="Explanation"/>.</summary>
    /// <returns>The explanation.</returns>
    public override string ToString() => Explanation;
}

/// <summary>A value that a search chose.</summary>
/// <param name="Variable">The variable and its bounds.</param>
/// <param name="Value">The chosen value, in the unit of its parameter.</param>
/// <param name="IsAtBound">True if the value is at one of its bounds, to within two thousandths of the distance between them.</param>
public readonly record struct ChosenValue(DesignVariable Variable, double Value, bool IsAtBound)
{
    /// <summary>The parameter and its value with a unit, in the invariant culture.</summary>
    /// <returns>Parameter and value, as text.</returns>
    public override string ToString() =>
        $"{Variable.Parameter} {Variable.Parameter.ShowRounded(Value)}{(IsAtBound ? " (at its bound)" : "")}";
}

/// <summary>The amount by which a target was missed.</summary>
/// <param name="Target">The target.</param>
/// <param name="Error">The value reached minus the value wanted: cents, tenths of a decibel or tenths of a millimetre.</param>
public readonly record struct TargetError(ShapeTarget Target, double Error)
{
    /// <summary>The target and the amount by which it was missed, in the invariant culture.</summary>
    /// <returns>Target and error, as text.</returns>
    public override string ToString() =>
        double.IsNaN(Error)
            ? $"{Target}: no such resonance"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{Target}: missed by {Math.Round(Math.Abs(Error), 3)} {Target.ErrorUnit}"
            );
}

/// <summary>The outcome of the search from one start.</summary>
/// <param name="IsSolved">True if the search from this start met all targets.</param>
/// <param name="LargestError">The largest error of a target there; NaN if a resonance is missing.</param>
/// <param name="Evaluations">The number of shapes whose resonances were computed.</param>
public readonly record struct ShapeStart(bool IsSolved, double LargestError, int Evaluations)
{
    /// <summary>The outcome and its largest error, in the invariant culture.</summary>
    /// <returns>Outcome and error, as text.</returns>
    public override string ToString() =>
        double.IsNaN(LargestError)
            ? $"a resonance is missing, {Shapes}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{(IsSolved ? "targets met" : "targets missed")}, largest error {LargestError:0.###}, {Shapes}"
            );

    private string Shapes =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Evaluations} shape{(Evaluations == 1 ? "" : "s")} computed"
        );
}
