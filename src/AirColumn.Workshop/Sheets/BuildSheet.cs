using System.Globalization;
using System.Text;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>One page for the bench, as HTML that needs nothing else and prints on the two sides of a sheet.</summary>
public static class BuildSheet
{
    private const string Style = """
        :root { color-scheme: light; }
        body { font: 15px/1.45 system-ui, sans-serif; color: #1a1a1a; background: #fff; max-width: 760px; margin: 0 auto; padding: 14px; }
        h1 { font-size: 1.45em; margin: 0 0 .2em; }
        h2 { font-size: 1.05em; margin: 1.1em 0 .3em; border-bottom: 1px solid #999; }
        p { margin: .3em 0; }
        .note { color: #555; font-size: .85em; }
        .mind { background: #fdf3dc; padding: .3em .6em; border-left: 4px solid #c77700; }
        table { border-collapse: collapse; width: 100%; font-size: .92em; }
        th, td { text-align: left; padding: .18em .5em .18em 0; border-bottom: 1px solid #ddd; vertical-align: top; }
        th { font-weight: 600; }
        ol, ul { margin: .3em 0; padding-left: 1.4em; }
        svg { width: 100%; height: auto; display: block; }
        svg text { font: 11px system-ui, sans-serif; fill: #1a1a1a; }
        .bore { fill: #dce8f3; stroke: #16476b; stroke-width: 1.6; stroke-linejoin: miter; }
        .axis { stroke: #16476b; stroke-width: .6; stroke-dasharray: 9 3 2 3; }
        .ruler { stroke: #444; stroke-width: 1; }
        .lead { stroke: #888; stroke-width: .7; }
        .callout { fill: #fff; stroke: #16476b; }
        text.number, text.size, text.tickx, text.axisname, text.peakname, text.peakcents { text-anchor: middle; }
        text.right, text.tick { text-anchor: end; }
        .grid { stroke: #e2e2e2; stroke-width: 1; }
        .harmonic { stroke: #c77700; stroke-width: 1; stroke-dasharray: 3 3; }
        .curve { fill: none; stroke: #16476b; stroke-width: 1.5; }
        .peak { fill: #16476b; }
        text.peakname { font-weight: 600; }
        text.peakcents { font-size: 10px; fill: #444; }
        @media print { body { font-size: 8.8pt; line-height: 1.32; max-width: none; padding: 0; } svg { max-height: 44mm; } h2 { margin-top: .8em; break-after: avoid; } table, svg, ol, li { break-inside: avoid; } }
        @page { margin: 11mm; }
        """;

    /// <summary>The page.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">What stands above it; the note if empty.</param>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    public static string Html(TubeBuild build, string title = "")
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(title);
        if (!build.IsSolved)
        {
            throw new ArgumentException(build.Explanation, nameof(build));
        }

        var heading = title.Length > 0 ? title : Text($"Tube on {build.Note}");
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(Sheets.Html.Escaped(heading))
            .Append("</title>\n<style>\n")
            .Append(Style.ReplaceLineEndings("\n"))
            .Append("\n</style>\n</head>\n<body>\n<h1>")
            .Append(Sheets.Html.Escaped(heading))
            .Append("</h1>\n");
        Opening(page, build);
        page.Append(BoreDrawing.Of(build.FirstCut.Tube));
        Bore(page, build.FirstCut.Tube);
        Cuts(page, build);
        page.Paragraph($"{SheetWords.Cautions}: {Cautions.First}");
        Care(page, CautionStep.Cutting, CautionStep.Dust, CautionStep.Edges);
        page.Heading(SheetWords.FitUp);
        if (FitUp.NeedsHeat(build.Assembly))
        {
            Care(page, CautionStep.Heating);
        }

        page.List(FitUp.Steps(build.Assembly), true);
        page.Paragraph(
            "Put everything together dry, play and trim; join for good only when it is in tune.",
            "note"
        );
        Care(page, CautionStep.SolventCement);
        page.Heading(SheetWords.Chart);
        page.Append(ImpedanceChart.Of(build, build.Exact));
        page.Paragraph(
            "At the length for the resonance on the note; each peak with the nearest note and how many cents it lies from it.",
            "note"
        );
        Trimming(page, build);
        Care(page, CautionStep.Playing, CautionStep.Hygiene);
        Sure(page, build);
        page.Heading(SheetWords.WhatIf);
        page.List(WhatIf.Of(build), false);
        page.Heading(SheetWords.Finishing);
        Care(page, CautionStep.Paint);
        page.Append("</body>\n</html>\n");
        return page.ToString();
    }

    // Where the work is that they are about.
    private static void Care(StringBuilder page, params CautionStep[] steps) =>
        page.List(
            steps.Select(step => Cautions.For(step)).Select(caution => $"{caution.Title}: {caution.Text}"),
            false
        );

    private static void Opening(StringBuilder page, TubeBuild build)
    {
        var played = build.Played!;
        page.Paragraph(
            Text(
                $"{build.Note} is {build.Tuning.FrequencyOf(build.Note).Hertz:0.00} Hz with A4 = {build.Tuning.Reference.Hertz:0.##} Hz. "
            )
                + (
                    build.Air.State is { } air
                        ? Text(
                            $"Air {air.Temperature.DegreesCelsius:0.#} °C, {air.Humidity.Percent:0.#} % humidity. "
                        )
                        : ""
                )
                + Text(
                    $"Played note: {played.Correction.MeanCents:+0.#;-0.#;0} cents from the first resonance expected, give or take {played.PlusMinusCents:0.#} (19 times of 20)."
                )
        );
        foreach (var warning in build.Warnings)
        {
            page.Paragraph($"{SheetWords.Mind}: {warning}", "mind");
        }
    }

    private static void Bore(StringBuilder page, AssembledTube tube)
    {
        page.Heading(SheetWords.Bore);
        page.Table(
            SheetWords.BoreHead,
            tube.Bore.Sections.Select(
                (section, i) =>
                    new[]
                    {
                        Text($"{i + 1}"),
                        tube.SectionParts[i].Name,
                        section.InletDiameter.Equals(section.OutletDiameter, Length.FromMillimeters(1e-6))
                            ? Wording.Size(section.InletDiameter)
                            : $"{Wording.Size(section.InletDiameter)} to {Wording.Size(section.OutletDiameter)}",
                        Wording.Both(section.Length),
                    }
            )
        );
        page.Paragraph("With the open pipe at its first cut.", "note");
    }

    private static void Cuts(StringBuilder page, TubeBuild build)
    {
        page.Heading(SheetWords.CutList);
        page.Table(
            SheetWords.CutHead,
            build.FirstCut!.Tube.Cuts.Select(cut =>
                ReferenceEquals(cut.Pipe, build.Assembly.FreePipe)
                    ? new[]
                    {
                        cut.Pipe.Name,
                        Wording.Millimetres(cut.Cut),
                        InchFraction.Describe(build.FirstCutInches!.Cut),
                        Wording.Both(build.Exact!.Cut),
                    }
                    :
                    [
                        cut.Pipe.Name,
                        Wording.Millimetres(cut.Cut),
                        InchFraction.Describe(cut.Cut),
                        "as given",
                    ]
            )
        );
        page.Paragraph(
            Text(
                $"Cut beside the mark, on the waste side: the saw's kerf is not included. At {Wording.Millimetres(build.WholeMillimetre!.Cut)} the first resonance lies {build.WholeMillimetre.Cents:+0.0;-0.0;0.0} cents from the note, at {build.WholeSixteenth!.Tube.FreeCut!.Cut.Inches:0.####} in {build.WholeSixteenth.Cents:+0.0;-0.0;0.0}."
            )
        );
    }

    private static void Trimming(StringBuilder page, TubeBuild build)
    {
        page.Heading(SheetWords.Trim);
        page.Paragraph(
            "Make the first cut and play. If the note is steady and flat, cut on by what you hear, a little less each time; the table says what to expect."
        );
        var hidden = build.FirstCut!.Tube.FreeCut!.Hidden.Millimeters;
        page.Table(
            SheetWords.TrimHead,
            build.Trim!.Rows.Select(row =>
                new[]
                {
                    Wording.Both(row.Cut),
                    Wording.Both(Length.FromMillimeters(row.Length.Millimeters + hidden)),
                    Text($"{row.Note.Hertz:0.00} Hz"),
                    Text($"{row.Cents:+0.0;-0.0;0.0} cents, give or take {row.PlusMinusCents:0}"),
                }
            )
        );
    }

    private static void Sure(StringBuilder page, TubeBuild build)
    {
        page.Heading(SheetWords.Sure);
        var budget = build.Budget!;
        page.Paragraph(
            Text(
                $"The first resonance is sure to {budget.PlusMinusCents:0.#} cents (19 times of 20), before the player. What it depends on most:"
            )
        );
        page.Table(
            SheetWords.SureHead,
            budget
                .Contributions.Take(5)
                .Select(contribution =>
                    new[]
                    {
                        FitUp.NameOf(contribution.Tolerance.Parameter, build.Exact!.Tube),
                        FitUp.Amount(contribution.Tolerance),
                        Text($"{contribution.StandardDeviationCents:0.0} cents (one standard deviation)"),
                        Text($"{100 * contribution.Share:0} %"),
                    }
                )
        );
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
