using System.Globalization;
using System.Text;
using AirColumn.Design;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
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

    /// <summary>The page, with lengths in millimetres and inches.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">What stands above it; the note if empty.</param>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    public static string Html(TubeBuild build, string title) => Html(build, title, LengthUnits.Both);

    /// <summary>The page.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">What stands above it; the note if empty.</param>
    /// <param name="units">In which units lengths are written.</param>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The units are not among the named ones.</exception>
    public static string Html(TubeBuild build, string title, LengthUnits units)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(title);
        Require.Named(units);
        if (!build.IsSolved)
        {
            throw new ArgumentException(build.Explanation, nameof(build));
        }

        var sizes = new Sizes(units);
        var fitUp = new FitUp(sizes);
        var heading = title.Length > 0 ? title : SheetWords.Title(build);
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(Sheets.Html.Escaped(heading))
            .Append("</title>\n<style>\n")
            .Append(Style.ReplaceLineEndings("\n"))
            .Append("\n</style>\n</head>\n<body>\n<h1>")
            .Append(Sheets.Html.Escaped(heading))
            .Append("</h1>\n");
        Opening(page, build, build.Played);
        page.Append(BoreDrawing.Of(build.FirstCut.Tube, sizes));
        Bore(page, build.FirstCut.Tube, sizes);
        Cuts(page, build, sizes, units);
        page.Paragraph($"{SheetWords.Cautions}: {Cautions.First}");
        Care(page, CautionStep.Cutting, CautionStep.Dust, CautionStep.Edges);
        var (plastic, metal) = (FitUp.HasPlastic(build.Assembly), FitUp.HasMetal(build.Assembly));
        if (metal)
        {
            Care(page, CautionStep.Metal);
        }

        page.Heading(SheetWords.FitUp);
        if (FitUp.NeedsHeat(build.Assembly) && metal)
        {
            page.Paragraph($"{SheetWords.Mind}: {SheetWords.NotPlastic}", "mind");
        }

        if (FitUp.NeedsHeat(build.Assembly) && plastic)
        {
            Care(page, CautionStep.Heating);
        }

        page.List(fitUp.Steps(build.Assembly), true);
        page.Paragraph(SheetWords.DryFirst, "note");
        if (FitUp.IsJoined(build.Assembly) && plastic)
        {
            Care(page, CautionStep.SolventCement);
        }

        page.Heading(SheetWords.Chart);
        page.Append(ImpedanceChart.Of(build, build.Exact));
        page.Paragraph(SheetWords.ChartNote, "note");
        Trimming(page, build, sizes);
        Care(page, CautionStep.Playing, CautionStep.Hygiene);
        Sure(page, build, fitUp);
        page.Heading(SheetWords.WhatIf);
        page.List(WhatIf.Of(build, units), false);
        page.Heading(SheetWords.Finishing);
        Care(page, CautionStep.Paint);
        page.Append("</body>\n</html>\n");
        return page.ToString();
    }

    // Where the work is that they are about.
    private static void Care(StringBuilder page, params CautionStep[] steps) =>
        page.List(steps.Select(step => SheetWords.Caution(Cautions.For(step))), false);

    private static void Opening(StringBuilder page, TubeBuild build, PlayedNote played)
    {
        page.Paragraph(SheetWords.Opening(build, played));
        foreach (var warning in build.Warnings)
        {
            page.Paragraph($"{SheetWords.Mind}: {warning}", "mind");
        }
    }

    private static void Bore(StringBuilder page, AssembledTube tube, Sizes sizes)
    {
        page.Heading(SheetWords.Bore);
        page.Table(
            SheetWords.BoreHead,
            tube.Bore.Sections.Select(
                (section, i) =>
                    new[]
                    {
                        (i + 1).ToString(CultureInfo.InvariantCulture),
                        tube.SectionParts[i].Name,
                        section.InletDiameter.Equals(section.OutletDiameter, Length.FromMillimeters(1e-6))
                            ? sizes.Caliper(section.InletDiameter)
                            : SheetWords.FromTo(
                                sizes.Caliper(section.InletDiameter),
                                sizes.Caliper(section.OutletDiameter)
                            ),
                        sizes.Tape(section.Length),
                    }
            )
        );
        page.Paragraph(SheetWords.BoreNote, "note");
    }

    private static void Cuts(StringBuilder page, TubeBuild build, Sizes sizes, LengthUnits units)
    {
        page.Heading(SheetWords.CutList);
        // Rounded up in either unit by itself: half a sixteenth is not a millimetre.
        var (millimetre, inches) = (
            Wording.Millimetres(build.FirstCut!.Cut),
            InchFraction.Describe(build.FirstCutInches!.Cut)
        );
        var first = units switch
        {
            LengthUnits.Millimetres => millimetre,
            LengthUnits.Inches => inches,
            _ => SheetWords.FirstCuts(millimetre, inches),
        };
        page.Table(
            SheetWords.CutHead,
            build.FirstCut.Tube.Cuts.Select(cut =>
                ReferenceEquals(cut.Pipe, build.Assembly.FreePipe)
                    ? new[] { cut.Pipe.Name, first, sizes.Tape(build.Exact!.Cut) }
                    : [cut.Pipe.Name, sizes.Tape(cut.Cut), SheetWords.AsGiven]
            )
        );
        page.Paragraph(SheetWords.Kerf(build.WholeMillimetre!, build.WholeSixteenth!));
    }

    private static void Trimming(StringBuilder page, TubeBuild build, Sizes sizes)
    {
        page.Heading(SheetWords.Trim);
        page.Paragraph(SheetWords.TrimNote);
        if (FitUp.IsFormedFromOpenPipe(build.Assembly))
        {
            page.Paragraph(SheetWords.TrimAtTheLips);
        }

        var hidden = build.FirstCut!.Tube.FreeCut!.Hidden.Millimeters;
        page.Table(
            SheetWords.TrimHead,
            build.Trim!.Rows.Select(row =>
                new[]
                {
                    sizes.Tape(row.Cut),
                    sizes.Tape(Length.FromMillimeters(row.Length.Millimeters + hidden)),
                    SheetWords.Hertz(row.Note),
                    SheetWords.FromTheNote(row.Cents, row.PlusMinusCents),
                }
            )
        );
    }

    private static void Sure(StringBuilder page, TubeBuild build, FitUp fitUp)
    {
        page.Heading(SheetWords.Sure);
        var budget = build.Budget!;
        page.Paragraph(SheetWords.SureTo(budget.PlusMinusCents));
        page.Table(
            SheetWords.SureHead,
            budget
                .Contributions.Take(5)
                .Select(contribution =>
                    new[]
                    {
                        FitUp.NameOf(contribution.Tolerance.Parameter, build.Exact!.Tube),
                        fitUp.Amount(contribution.Tolerance),
                        SheetWords.Makes(contribution.StandardDeviationCents),
                        SheetWords.Share(contribution.Share),
                    }
                )
        );
    }
}
