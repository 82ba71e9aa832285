using System.Globalization;
using AirColumn.Design;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>One page for the bench: HTML that needs nothing else and prints on the two sides of a sheet, or PDF.</summary>
public static class BuildSheet
{
    /// <summary>The page as HTML, with lengths in millimetres and inches.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">What stands above it; the note if empty.</param>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    public static string Html(TubeBuild build, string title) => Html(build, title, LengthUnits.Both);

    /// <summary>The page as HTML.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">What stands above it; the note if empty.</param>
    /// <param name="units">In which units lengths are written.</param>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The units are not among the named ones.</exception>
    public static string Html(TubeBuild build, string title, LengthUnits units)
    {
        var page = new HtmlPage(TitleOf(build, title));
        Write(page, build, units);
        return page.ToString();
    }

    /// <summary>The same as PDF, on A4.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">What stands above it; the note if empty.</param>
    /// <param name="units">In which units lengths are written.</param>
    /// <returns>The file. It is in ASCII: signs in words, letters without their marks, other scripts as question marks.</returns>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The units are not among the named ones.</exception>
    public static byte[] Pdf(TubeBuild build, string title, LengthUnits units)
    {
        using var page = new PdfPage(TitleOf(build, title));
        Write(page, build, units);
        return page.ToBytes();
    }

    private static string TitleOf(TubeBuild build, string title)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(title);
        return title.Length > 0 ? title : SheetWords.Title(build);
    }

    private static void Write(SheetPage page, TubeBuild build, LengthUnits units)
    {
        Require.Named(units);
        if (!build.IsSolved)
        {
            throw new ArgumentException(build.Explanation, nameof(build));
        }

        var sizes = new Sizes(units);
        var fitUp = new FitUp(sizes);
        Opening(page, build, build.Played);
        var (drawing, note) = BoreDrawing.Of(build.FirstCut.Tube, sizes);
        page.Draw(drawing);
        page.Paragraph(note, ParagraphStyle.Note);
        Bore(page, build.FirstCut.Tube, sizes);
        Cuts(page, build, sizes, units);
        page.Paragraph($"{SheetWords.Cautions}: {Cautions.First}");
        Care(
            page,
            CautionStep.Pipe,
            CautionStep.Cutting,
            CautionStep.Hearing,
            CautionStep.Dust,
            CautionStep.Edges
        );
        var (plastic, metal) = (FitUp.HasPlastic(build.Assembly), FitUp.HasMetal(build.Assembly));
        if (metal)
        {
            Care(page, CautionStep.Metal);
        }

        page.Heading(SheetWords.FitUp);
        if (FitUp.NeedsHeat(build.Assembly))
        {
            Care(page, CautionStep.Heating);
            page.List(FitUp.HeatLimitsOf(build.Assembly), false);
        }

        page.List(fitUp.Steps(build.Assembly), true);
        page.Paragraph(SheetWords.DryFirst, ParagraphStyle.Note);
        if (FitUp.IsJoined(build.Assembly) && plastic)
        {
            Care(page, CautionStep.SolventCement);
        }

        page.Heading(SheetWords.Chart);
        page.Draw(ImpedanceChart.Of(build, build.Exact));
        page.Paragraph(SheetWords.ChartNote, ParagraphStyle.Note);
        Trimming(page, build, sizes);
        Care(page, CautionStep.Playing, CautionStep.Hygiene);
        Sure(page, build, fitUp);
        page.Heading(SheetWords.WhatIf);
        page.List(WhatIf.Of(build, units), false);
        page.Heading(SheetWords.Finishing);
        Care(page, CautionStep.Paint, CautionStep.Drilling);
    }

    // Where the work is that they are about.
    private static void Care(SheetPage page, params CautionStep[] steps) =>
        page.List(steps.Select(step => SheetWords.Caution(Cautions.For(step))), false);

    private static void Opening(SheetPage page, TubeBuild build, PlayedNote played)
    {
        page.Paragraph(SheetWords.Opening(build, played));
        // What is about one part stands where the part is put in.
        foreach (var warning in build.Warnings.Except(build.Assembly.Remarks.Select(remark => remark.Text)))
        {
            page.Paragraph($"{SheetWords.Note}: {warning}", ParagraphStyle.Mind);
        }
    }

    private static void Bore(SheetPage page, AssembledTube tube, Sizes sizes)
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
        page.Paragraph(SheetWords.BoreNote, ParagraphStyle.Note);
    }

    private static void Cuts(SheetPage page, TubeBuild build, Sizes sizes, LengthUnits units)
    {
        page.Heading(SheetWords.CutList);
        page.Table(
            SheetWords.CutHead,
            build.CutList.Select(cut =>
                new[]
                {
                    cut.Pipe.Name,
                    cut.Length.In(units),
                    cut.Pipe.Cut is null ? sizes.Tape(build.Exact!.Cut) : SheetWords.AsGiven,
                }
            )
        );
        page.Paragraph(SheetWords.Kerf(build.WholeMillimetre!, build.WholeSixteenth!));
    }

    private static void Trimming(SheetPage page, TubeBuild build, Sizes sizes)
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

    private static void Sure(SheetPage page, TubeBuild build, FitUp fitUp)
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
