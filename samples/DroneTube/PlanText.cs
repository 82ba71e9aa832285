using System.Text;
using AirColumn.Workshop;
using Shared;
using UnitsNet;
using static DroneTube.Show;

namespace DroneTube;

/// <summary>A plan as a page for the bench: each caution stands before the step it is about.</summary>
internal static class PlanText
{
    private static readonly CautionStep[] BeforeCutting =
    [
        CautionStep.Pipe,
        CautionStep.Cutting,
        CautionStep.Hearing,
        CautionStep.Dust,
        CautionStep.Edges,
    ];
    private static readonly CautionStep[] BeforePlaying = [CautionStep.Playing, CautionStep.Hygiene];
    private static readonly CautionStep[] BeforeFinishing =
    [
        CautionStep.Heating,
        CautionStep.SolventCement,
        CautionStep.Paint,
        CautionStep.Drilling,
    ];

    public static string Of(TubePlan plan)
    {
        if (!plan.IsSolved)
        {
            throw new FailureException(plan.Explanation);
        }

        var lines = new StringBuilder();
        Heading(lines, plan);
        foreach (var warning in plan.Warnings)
        {
            lines.Paragraph($"Note: {warning}", 0, 2);
        }

        lines.Row();
        Lengths(lines, plan.Exact, plan.QuarterWave);
        lines.Row();
        CutList(lines, plan.Parts.FittingsLength, plan.WholeMillimetre, plan.WholeSixteenth, plan.Trimming);
        lines.Row();
        lines.Row($"Cautions: {Cautions.First}");
        Care(lines, BeforeCutting);
        lines.Row();
        Trim(lines, plan.WholeMillimetre, plan.WholeSixteenth, plan.Trimming);
        Care(lines, BeforePlaying);
        lines.Row();
        Overblown(lines, plan.Overblown);
        lines.Row();
        lines.Row("Joining and finishing");
        Care(lines, BeforeFinishing);
        return lines.ToString();
    }

    private static void Heading(StringBuilder lines, TubePlan plan)
    {
        lines.Row(
            Text(
                $"Drone tube on {plan.Note}: {Hertz(plan.Target)} (A4 = {plan.Tuning.Reference.Hertz:0.##} Hz)"
            )
        );
        if (plan.Air.State is { } air)
        {
            lines.Row(
                Text($"Air {air.Temperature.DegreesCelsius:0.#} °C, {air.Humidity.Percent:0.#} % humidity, ")
                    + Text($"speed of sound {plan.Air.SpeedOfSound.MetersPerSecond:0.0} m/s")
            );
        }

        lines.Row();
        lines.Row("Parts               adds to the length       inside diameter");
        Part(lines, plan.Parts.Mouth);
        Part(lines, "pipe", "", plan.Parts.PipeDiameter);
        Part(lines, plan.Parts.End);
        var rim = plan.Parts.Wall > Length.Zero ? $"wall {Size(plan.Parts.Wall)}" : "taken as a thin edge";
        lines.Row($"  {"open end", -18}{rim}");
        lines.Row("  (A fitting adds the length of tube with it, less the length without it.)");
    }

    private static void Part(StringBuilder lines, Fitting? fitting)
    {
        if (fitting is not null)
        {
            Part(lines, fitting.Name, Size(fitting.AddedLength), fitting.InsideDiameter);
        }
    }

    private static void Part(StringBuilder lines, string name, string adds, Length inside) =>
        lines.Row($"  {name, -18}{adds, -25}{Size(inside)}");

    private static void Lengths(StringBuilder lines, TubeCut exact, QuarterWaveRule rule)
    {
        lines.Row("Lengths, computed          metric         nearest 1/16 in");
        Exact(lines, "total length", exact.TotalLength);
        Exact(lines, "pipe cut length", exact.PipeLength);
        Rule(lines, rule);
    }

    private static void Exact(StringBuilder lines, string name, Length length) =>
        lines.Row($"  {name, -25}{Millimetres(length), -15}{Inches(length)}");

    // A pipe of whole units and fittings rounded to the digits shown: so the printed sums are exact.
    private static void CutList(
        StringBuilder lines,
        Length fittings,
        TubeCut millimetre,
        TubeCut sixteenth,
        Trimming trimming
    )
    {
        lines.Row("To cut, rounded       pipe        + fittings  = total     first resonance");
        Metric(lines, "in mm", fittings, millimetre);
        Inch(lines, "in 1/16 in", fittings, sixteenth);
        Metric(lines, "first cut, mm", fittings, trimming.FirstCut);
        Inch(lines, "first cut, 1/16 in", fittings, trimming.FirstCutInches);
        lines.Row("The saw's kerf is not included: cut beside the mark, on the waste side.");
    }

    private static void Metric(StringBuilder lines, string name, Length fittings, TubeCut cut) =>
        Cut(
            lines,
            name,
            (Hundredths(cut.PipeLength), Hundredths(fittings), Hundredths(cut.TotalLength)),
            cut
        );

    private static void Inch(StringBuilder lines, string name, Length fittings, TubeCut cut)
    {
        var pipe = InchFraction.Nearest(cut.PipeLength);
        var rest = InchFraction.Nearest(fittings);
        var total = new InchFraction(pipe.Sixteenths + rest.Sixteenths);
        Cut(lines, name, (pipe.ToString(), rest.ToString(), total.ToString()), cut);
    }

    private static void Cut(
        StringBuilder lines,
        string name,
        (string Pipe, string Fittings, string Total) sum,
        TubeCut cut
    ) =>
        lines.Row(
            $"  {name, -20}{sum.Pipe, -12}{sum.Fittings, -12}{sum.Total, -12}{Hertz(cut.FirstResonance)}, {Cents(cut.Cents)}"
        );

    private static void Trim(StringBuilder lines, TubeCut millimetre, TubeCut sixteenth, Trimming trimming)
    {
        var slope = trimming.CentsPerMillimetre;
        lines.Row(
            Text($"Trimming: 1 mm less is {-slope:0.00} cents sharper, 1/16 in {-slope * 1.5875:0.00} cents.")
        );
        var millimetres = trimming.FirstCut.PipeLength - millimetre.PipeLength;
        var inches = new InchFraction(
            InchFraction.Nearest(trimming.FirstCutInches.PipeLength).Sixteenths
                - InchFraction.Nearest(sixteenth.PipeLength).Sixteenths
        );
        lines.Paragraph(
            Text(
                $"The first cut leaves {Millimetres(millimetres)} or {inches} to trim: {trimming.BandCents:0.#} cents and "
            )
                + $"{Size(trimming.MeasuringTolerance)} for measuring, rounded up. "
                + "The played note is not the first resonance: it usually lies 11 to 32 cents above the one computed for the air of "
                + "the room (common practice), and lips bend it further. So make the first cut, play, and trim a little at a time."
        );
    }

    private static void Overblown(StringBuilder lines, IReadOnlyList<OverblownNote> notes)
    {
        if (notes.Count == 0)
        {
            lines.Row("Overblown: no further resonance that has a note.");
            return;
        }

        lines.Row("Overblown           nearest note       above the first, nearest interval");
        foreach (var note in notes)
        {
            var interval = Text($"{note.CentsAboveFirst:0} cents, {Intervals.Nearest(note.CentsAboveFirst)}");
            lines.Row(
                $"  {Ordinal(note.Resonance), -6}{Hertz(note.Frequency), -12}{note.Nearest, -19}{interval}"
            );
        }
    }

    private static string Ordinal(int resonance) =>
        resonance switch
        {
            2 => "2nd",
            3 => "3rd",
            _ => Text($"{resonance}th"),
        };

    private static void Rule(StringBuilder lines, QuarterWaveRule rule)
    {
        var off = rule.Difference < Length.Zero ? "short" : "long";
        var sounds = rule.Cut is { } cut
            ? $"with that the first resonance would be {SharpOrFlat(cut.Cents)}."
            : "these parts cannot be cut to that.";
        lines.Paragraph(
            $"Quarter-wave rule, total = c/4f: {Both(rule.TotalLength)}, {Both(rule.Difference.Abs())} too {off}; {sounds}",
            2,
            4
        );
    }

    private static void Care(StringBuilder lines, CautionStep[] steps)
    {
        foreach (var caution in steps.Select(Cautions.For))
        {
            lines.Paragraph($"{caution.Title}: {caution.Text}", 2, 4);
            if (caution.Step == CautionStep.Heating)
            {
                foreach (var limits in HeatLimits.All)
                {
                    lines.Paragraph(limits.Text, 4, 4);
                }
            }
        }
    }
}
