using System.Text;
using AirColumn.Workshop;
using AirColumn.Workshop.Tubes;
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

    private static bool InMillimetres => Units != LengthUnits.Inches;

    private static bool InInches => Units != LengthUnits.Millimetres;

    /// <summary>The page of a plan that has a solution.</summary>
    public static string Of(TubeBuild build)
    {
        var lines = new StringBuilder();
        Heading(lines, build);
        foreach (var warning in build.WarningsIn(Units))
        {
            lines.Paragraph($"Note: {warning}", 0, 2);
        }

        lines.Row();
        Lengths(lines, build.Exact!, QuarterWaveRule.Of(build));
        lines.Row();
        CutList(lines, build);
        lines.Row();
        lines.Row($"Cautions: {Cautions.First}");
        Care(lines, BeforeCutting);
        lines.Row();
        Trim(lines, build);
        Care(lines, BeforePlaying);
        lines.Row();
        Overblown(lines, build.Overblown);
        lines.Row();
        lines.Row("Joining and finishing");
        Care(lines, BeforeFinishing);
        return lines.ToString();
    }

    private static void Heading(StringBuilder lines, TubeBuild build)
    {
        lines.Row(
            Text(
                $"Drone tube on {build.Note}: {Hertz(build.Target)} (A4 = {build.Tuning.Reference.Hertz:0.##} Hz)"
            )
        );
        if (build.Air.State is { } air)
        {
            lines.Row(
                Text($"Air {air.Temperature.DegreesCelsius:0.#} °C, {air.Humidity.Percent:0.#} % humidity, ")
                    + Text($"speed of sound {build.Air.SpeedOfSound.MetersPerSecond:0.0} m/s")
            );
        }

        lines.Row();
        lines.Row("Parts               adds to the length       inside diameter");
        foreach (var part in build.Assembly.Parts)
        {
            lines.Row(
                part switch
                {
                    AddedPart added => $"  {added.Name, -18}{Size(added.Adds), -25}{Size(added.Inside)}",
                    PipePart pipe => $"  {pipe.Name, -18}{"", -25}{Size(pipe.Inside)}",
                    _ => $"  {part.Name}",
                }
            );
        }

        var wall = build.Assembly.Wall;
        var rim = wall > Length.Zero ? $"wall {Size(wall)}" : "taken as a thin edge";
        lines.Row($"  {"open end", -18}{rim}");
        lines.Row("  (A fitting adds the length of tube with it, less the length without it.)");
    }

    private static void Lengths(StringBuilder lines, BuiltTube exact, QuarterWaveRule rule)
    {
        lines.Row(Columns("Lengths, computed", "metric", "nearest 1/16 in"));
        Exact(lines, "total length", exact.Tube.Bore.Length);
        Exact(lines, "pipe cut length", exact.Cut);
        Rule(lines, rule);
    }

    private static void Exact(StringBuilder lines, string name, Length length) =>
        lines.Row(Columns($"  {name}", Millimetres(length), Inches(length)));

    private static string Columns(string name, string metric, string inches) =>
        $"{name, -27}{(InMillimetres ? $"{metric, -15}" : "")}{(InInches ? inches : "")}";

    // A pipe of whole units and fittings rounded to the digits shown: so the printed sums are exact.
    private static void CutList(StringBuilder lines, TubeBuild build)
    {
        lines.Row("To cut, rounded       pipe        + fittings  = total     first resonance");
        Metric(lines, "in mm", build.WholeMillimetre!);
        Inch(lines, "in 1/16 in", build.WholeSixteenth!);
        Metric(lines, "first cut, mm", build.FirstCut!);
        Inch(lines, "first cut, 1/16 in", build.FirstCutInches!);
        lines.Row("The saw's kerf is not included: cut beside the mark, on the waste side.");
    }

    private static Length Fittings(BuiltTube built) =>
        Length.FromMillimeters(built.Tube.Bore.Length.Millimeters - built.Cut.Millimeters);

    private static void Metric(StringBuilder lines, string name, BuiltTube cut)
    {
        if (InMillimetres)
        {
            Cut(
                lines,
                name,
                (Hundredths(cut.Cut), Hundredths(Fittings(cut)), Hundredths(cut.Tube.Bore.Length)),
                cut
            );
        }
    }

    private static void Inch(StringBuilder lines, string name, BuiltTube cut)
    {
        if (InInches)
        {
            var pipe = InchFraction.Nearest(cut.Cut);
            var rest = InchFraction.Nearest(Fittings(cut));
            var total = new InchFraction(pipe.Sixteenths + rest.Sixteenths);
            Cut(lines, name, (pipe.ToString(), rest.ToString(), total.ToString()), cut);
        }
    }

    private static void Cut(
        StringBuilder lines,
        string name,
        (string Pipe, string Fittings, string Total) sum,
        BuiltTube cut
    ) =>
        lines.Row(
            $"  {name, -20}{sum.Pipe, -12}{sum.Fittings, -12}{sum.Total, -12}{Hertz(cut.FirstResonance)}, {Cents(cut.Cents)}"
        );

    private static void Trim(StringBuilder lines, TubeBuild build)
    {
        var slope = build.CentsPerMillimetre;
        var (metric, sixteenth) = (Text($"{-slope:0.00} cents"), Text($"{-slope * 1.5875:0.00} cents"));
        lines.Row(
            Units switch
            {
                LengthUnits.Millimetres => $"Trimming: 1 mm less is {metric} sharper.",
                LengthUnits.Inches => $"Trimming: 1/16 in less is {sixteenth} sharper.",
                _ => $"Trimming: 1 mm less is {metric} sharper, 1/16 in {sixteenth}.",
            }
        );
        var millimetres = Millimetres(build.FirstCut!.Cut - build.WholeMillimetre!.Cut);
        var inches = InchFraction.Nearest(build.FirstCutInches!.Cut - build.WholeSixteenth!.Cut).ToString();
        var left = Units switch
        {
            LengthUnits.Millimetres => millimetres,
            LengthUnits.Inches => inches,
            _ => $"{millimetres} or {inches}",
        };
        lines.Paragraph(
            Text(
                $"The first cut leaves {left} to trim, because the played note is not the first resonance. Expect it {build.Played!.Correction.MeanCents:0.#} cents "
            )
                + Text(
                    $"above, ±{build.Played.PlusMinusCents:0.#} (19 times out of 20). It usually lies 11 to 32 cents above the resonance "
                )
                + "computed for the air of the room (common practice), and lips bend it further. After the first cut it is still flat 39 times "
                + "out of 40, with the errors of sizes and room counted in. So make the first cut, play, and trim a little at a time."
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
            var interval = Text($"{note.CentsAboveFirst:0} cents, {note.Interval}");
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
        var sounds = rule.Built is { } cut
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
