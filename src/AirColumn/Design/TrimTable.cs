using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace AirColumn;

/// <summary>The drone of a tube after each cut, and how far to cut before listening. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<TrimTable>))]
public sealed record TrimTable : IJsonAnswer
{
    private TrimTable(
        TrimQuestion question,
        IReadOnlyList<TrimRow> rows,
        TrimRow? safeCut,
        string explanation
    )
    {
        (Question, Rows, SafeCut, Explanation) = (question, rows, safeCut, explanation);
    }

    /// <summary>The question that was asked.</summary>
    public TrimQuestion Question { get; }

    /// <summary>
    /// One row for each length. The first row is the tube as it is, and each further row is one step shorter. The rows end with the first
    /// tube that is expected to be sharp of the target, or at the number <see cref="TrimQuestion.Rows"/>.
    /// </summary>
    public IReadOnlyList<TrimRow> Rows { get; }

    /// <summary>
    /// The most that can be cut off before the 95 % range of the drone reaches above the target. After this cut, listen, and go on cutting by
    /// what you hear. Null if the tube may be sharp already, or if no cut reaches the target.
    /// </summary>
    public TrimRow? SafeCut { get; }

    /// <summary>One sentence: how far to cut first, or why not to cut.</summary>
    public string Explanation { get; }

    /// <summary>Makes the table.</summary>
    /// <param name="column">The tube as it is.</param>
    /// <param name="question">The section, the note and the steps.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// There is no such section, the target is above <see cref="Column.HighestFrequency"/>, or there are fewer holes than the number that keep
    /// their distance from the far end.
    /// </exception>
    /// <exception cref="ArgumentException">The column shows no first resonance, or does not have a parameter of a tolerance.</exception>
    public static TrimTable For(
        Column column,
        TrimQuestion question,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(question);
        Require.InRange(question.Section, 0, column.Bore.Sections.Count - 1, "", "section");
        Require.InRange(
            question.HolesFromFarEnd,
            0,
            column.Bore.Holes.Count,
            "",
            nameof(TrimQuestion.HolesFromFarEnd)
        );
        Require.InRange(question.Target.Hertz, 0, column.HighestFrequency.Hertz, "Hz", "target");
        return new Trimming(column.Decided(cancellationToken), question, cancellationToken).Run();
    }

    private sealed class Trimming(Column column, TrimQuestion question, CancellationToken cancellationToken)
    {
        private readonly double present = column.Bore.Sections[question.Section].LengthMetres;

        // Not through a hole or branch, nor through more than there is.
        private readonly double most = Math.Min(
            column.Bore.Sections[question.Section].LengthMetres - 1e-5,
            column.Bore.SpareMetres(question.HolesFromFarEnd)
        );

        public TrimTable Run()
        {
            var asItIs =
                At(0)
                ?? throw new ArgumentException(
                    "The column shows no first resonance, so there is nothing to trim.",
                    nameof(column)
                );
            var rows = new List<TrimRow> { asItIs };
            while (
                rows.Count < question.Rows
                && rows[^1].Cents <= 0
                && At(rows.Count * question.Step.Meters) is { } next
            )
            {
                rows.Add(next);
            }

            if (asItIs.Cents + asItIs.PlusMinusCents > 0)
            {
                return new TrimTable(question, rows, null, MayBeSharp(asItIs));
            }

            return SafeCut(asItIs.PlusMinusCents) is { } safe
                ? new TrimTable(question, rows, safe, CutTo(safe))
                : new TrimTable(
                    question,
                    rows,
                    null,
                    "However much is cut off, the note stays below the target, or the tube loses its resonance first: this section is not "
                        + "the one to trim for this note."
                );
        }

        private static string MayBeSharp(in TrimRow row) =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"Uncut, expect {Wording.SharpOrFlat(row.Cents)}, ±{row.PlusMinusCents:0}: the tube may be sharp already. Play it before any cut."
            );

        private static string CutTo(in TrimRow row) =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"Cut off no more than {row.Cut.Millimeters:0.0} mm, then play. Expect {Wording.SharpOrFlat(row.Cents)}, ±{row.PlusMinusCents:0}."
            );

        // Where the upper end of the range meets the target; null where it never does. How sure the note is changes little with the cut and takes
        // far longer to compute than the note, so that the search begins with how sure it is now.
        private TrimRow? SafeCut(double plusMinus)
        {
            var (low, high) = (0.0, Math.Min(question.Step.Meters, most));
            while (Guess(high) is < 0 && high < most)
            {
                (low, high) = (high, Math.Min(2 * high, most));
            }

            // Where it shows no resonance any more, back to where it still does.
            for (var i = 0; i < 60 && Guess(high) is null; i++)
            {
                var middle = (low + high) / 2;
                (low, high) = Guess(middle) is < 0 ? (middle, high) : (low, middle);
            }

            if (Guess(high) is > 1 && Nearby(low, high) is { } near)
            {
                return near;
            }

            // On the safe side of rounding.
            return Upper(high) is >= 0
                ? At(Math.Max(0, Brent.FindRoot(x => Upper(x) ?? 1e4, 0, high, 1e-9, 100) - 1e-8))
                : null;

            double? Guess(double cut) => NoteAt(cut) is { } note ? note.Cents + plusMinus : null;

            // From the cut that is guessed, by the slope there; null where that does not lead to one.
            TrimRow? Nearby(double from, double to)
            {
                const double Aim = -1e-5; // cents, on the safe side of rounding
                var cut = Brent.FindRoot(x => Guess(x) ?? 1e4, from, to, 1e-5, 100);
                var beside = cut + 1e-4 > most ? cut - 1e-4 : cut + 1e-4;
                if (Guess(beside) is not { } there || Guess(cut) is not { } here)
                {
                    return null;
                }

                var slope = (there - here) / (beside - cut);
                for (var i = 0; i < 8 && slope > 0 && cut >= 0 && At(cut) is { } row; i++)
                {
                    var off = row.Cents + row.PlusMinusCents - Aim;
                    if (Math.Abs(off) <= -Aim)
                    {
                        return row;
                    }

                    cut -= off / slope;
                }

                return null;
            }
        }

        // Null where there is none.
        private double? Upper(double cut) => At(cut) is { } row ? row.Cents + row.PlusMinusCents : null;

        // Null where so much cannot be cut off, or there is no resonance.
        private TrimRow? At(double cut)
        {
            if (NoteAt(cut) is not var (column, resonance, played, _))
            {
                return null;
            }

            if (question.Tolerances.Count > 0)
            {
                played = question.Correction.Of(
                    Uncertainty.FirstOrder(column, [resonance], question.Tolerances, cancellationToken)[0]
                );
            }

            return new TrimRow(
                Length.FromMillimeters(1000 * cut),
                Length.FromMillimeters(1000 * (present - cut)),
                resonance.Frequency,
                played.Frequency,
                Cents.Between(question.Target, played.Frequency),
                played.PlusMinusCents
            );
        }

        // The same without what tolerances make of it.
        private (Column Column, Resonance Resonance, PlayedNote Played, double Cents)? NoteAt(double cut)
        {
            if (cut > most + 1e-12 * present)
            {
                return null;
            }

            var trimmed =
                cut == 0
                    ? column
                    : column.WithBore(
                        column.Bore.WithSectionLength(
                            question.Section,
                            Length.FromMeters(present - cut),
                            question.HolesFromFarEnd
                        )
                    );
            if (trimmed.FirstResonances(1, cancellationToken) is not [var resonance])
            {
                return null;
            }

            var played = question.Correction.Of(resonance);
            return (trimmed, resonance, played, Cents.Between(question.Target, played.Frequency));
        }
    }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Objects("rows", Rows, row => ((IJsonAnswer)row).WriteMembers(json));
        if (SafeCut is { } safe)
        {
            json.Object("safeCut", safe);
        }

        json.WriteString("explanation", Explanation);
    }
}

/// <summary>The tube after a cut.</summary>
/// <param name="Cut">The length cut off.</param>
/// <param name="Length">The length of the section after the cut.</param>
/// <param name="Resonance">The first resonance after the cut.</param>
/// <param name="Note">The expected note: the resonance with the correction for the player.</param>
/// <param name="Cents">The distance from the target to the note; positive is sharp.</param>
/// <param name="PlusMinusCents">Half the 95 % range of the note.</param>
[JsonConverter(typeof(JsonAnswerConverter<TrimRow>))]
public readonly record struct TrimRow(
    Length Cut,
    Length Length,
    Frequency Resonance,
    Frequency Note,
    double Cents,
    double PlusMinusCents
) : IJsonAnswer
{
    /// <summary>The cut and the expected note, in the invariant culture.</summary>
    /// <returns>Cut and note, as text.</returns>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"cut {Cut.Millimeters:0.0} mm: {Note.Hertz:0.00} Hz, {Cents:+0.0;-0.0;0.0} ± {PlusMinusCents:0.0} cents"
        );

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Number("cutMetres", Cut.Meters);
        json.Number("lengthMetres", Length.Meters);
        json.Number("resonanceHz", Resonance.Hertz);
        json.Number("noteHz", Note.Hertz);
        json.Number("cents", Cents);
        json.Number("plusMinusCents", PlusMinusCents);
    }
}
