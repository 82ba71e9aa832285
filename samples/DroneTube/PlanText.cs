using System.Text;
using AirColumn.Workshop;
using Shared;
using UnitsNet;
using static DroneTube.Show;

namespace DroneTube;

/// <summary>A plan as one screen for the bench.</summary>
internal static class PlanText
{
    public static string Of(TubePlan plan)
    {
        if (!plan.IsSolved)
        {
            throw new FailureException(plan.Explanation);
        }

        var lines = new StringBuilder();
        Heading(lines, plan);
        lines.Row();
        Lengths(lines, plan.Exact, plan.WholeMillimetre, plan.WholeSixteenth, plan.Trimming);
        lines.Row();
        Trim(lines, plan.Trimming);
        lines.Row();
        Overblown(lines, plan.Overblown);
        Rule(lines, plan.QuarterWave);
        foreach (var warning in plan.Warnings)
        {
            lines.Paragraph($"Mind: {warning}", 0, 2);
        }

        lines.Row();
        Care(lines);
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
        var rim = plan.Parts.Wall > Length.Zero ? $"wall {Both(plan.Parts.Wall)}" : "taken as a thin edge";
        lines.Row($"  {"open end", -18}{rim}");
    }

    private static void Part(StringBuilder lines, Fitting? fitting)
    {
        if (fitting is not null)
        {
            Part(lines, fitting.Name, Both(fitting.AddedLength), fitting.InsideDiameter);
        }
    }

    private static void Part(StringBuilder lines, string name, string adds, Length inside) =>
        lines.Row($"  {name, -18}{adds, -25}{Both(inside)}");

    private static void Lengths(
        StringBuilder lines,
        TubeCut exact,
        TubeCut millimetre,
        TubeCut sixteenth,
        Trimming trimming
    )
    {
        lines.Row("Lengths                    metric         inches         first resonance");
        Cut(lines, "total length", exact.TotalLength, exact);
        Cut(lines, "pipe cut length", exact.PipeLength, exact);
        Cut(lines, "  in whole mm", millimetre.PipeLength, millimetre);
        Cut(lines, "  in 1/16 in", sixteenth.PipeLength, sixteenth);
        Cut(lines, "first cut, whole mm", trimming.FirstCut.PipeLength, trimming.FirstCut);
        Cut(lines, "first cut, 1/16 in", trimming.FirstCutInches.PipeLength, trimming.FirstCutInches);
    }

    private static void Cut(StringBuilder lines, string name, Length length, TubeCut cut) =>
        lines.Row(
            $"  {name, -25}{Millimetres(length), -15}{Inches(length), -15}{Hertz(cut.FirstResonance)}, {Cents(cut.Cents)}"
        );

    private static void Trim(StringBuilder lines, Trimming trimming)
    {
        var slope = trimming.CentsPerMillimetre;
        lines.Row(
            Text($"Trimming: 1 mm less is {-slope:0.00} cents sharper, 1/16 in {-slope * 1.5875:0.00} cents.")
        );
        lines.Paragraph(
            Text($"Leave {Both(trimming.Allowance)} at first: {trimming.BandCents:0.#} cents and ")
                + $"{Millimetres(trimming.MeasuringTolerance)} ({Inches(trimming.MeasuringTolerance)}) for measuring. "
                + "The first resonance and the played note are not the same: makers' published lengths put the played note "
                + "11 to 32 cents above the first resonance computed for cold air (common practice), and lips bend it further. "
                + "So make the first cut, play, and trim a little at a time."
        );
    }

    private static void Overblown(StringBuilder lines, IReadOnlyList<OverblownNote> notes)
    {
        if (notes.Count == 0)
        {
            lines.Row("Overblown: no further resonance within plane-wave theory.");
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
            $"Quarter-wave rule, total = c/4f: {Both(rule.TotalLength)}, {Both(rule.Difference.Abs())} too {off}; {sounds}"
        );
    }

    private static void Care(StringBuilder lines)
    {
        lines.Row($"Cautions: {Cautions.First}");
        foreach (var caution in Cautions.All)
        {
            lines.Paragraph($"{caution.Title}: {caution.Text}", 2, 4);
        }
    }
}
