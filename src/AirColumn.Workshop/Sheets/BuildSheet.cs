using System.Globalization;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// One page for the bench, as HTML that needs nothing else: to read on a phone, by day or night, and to print, also to PDF, from any browser.
/// </summary>
public static class BuildSheet
{
    /// <summary>The title of the sheet: the name of the tube and the note, or the note alone.</summary>
    /// <param name="tube">The name of the tube; empty if it has none.</param>
    /// <param name="note">The note.</param>
    /// <returns>The title.</returns>
    public static string Title(string tube, Pitch note)
    {
        ArgumentNullException.ThrowIfNull(tube);
        return SheetWords.Title(tube, note);
    }

    /// <summary>The page, with lengths in millimetres and inches.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">The heading; empty for the note.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The HTML page.</returns>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    public static string Html(TubeBuild build, string title, CancellationToken cancellationToken = default) =>
        Html(build, title, LengthUnits.Both, cancellationToken);

    /// <summary>The page.</summary>
    /// <param name="build">A plan that has a solution.</param>
    /// <param name="title">The heading; empty for the note.</param>
    /// <param name="units">The units in which lengths are written.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The HTML page.</returns>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public static string Html(
        TubeBuild build,
        string title,
        LengthUnits units,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(title);
        Require.Named(units);
        if (!build.IsSolved)
        {
            throw new ArgumentException(build.Explanation, nameof(build));
        }

        var page = new HtmlPage(SheetWords.Kind, title.Length > 0 ? title : Title("", build.Note));
        var sizes = new Sizes(units);
        var fitUp = new FitUp(sizes);
        var cuts = CutsOf(build, units);
        FirstCut(page, build, sizes, cuts);
        page.Paragraph(SheetWords.Opening(build, build.Played));
        // What is about one part stands where the part is put in.
        foreach (
            var warning in build
                .WarningsIn(units)
                .Except(build.Assembly.Remarks.Select(remark => remark.Text))
        )
        {
            page.Remark($"{SheetWords.Note}: {warning}");
        }

        Cuts(page, build, units, cuts);
        Bore(page, (units == LengthUnits.Inches ? build.FirstCutInches : build.FirstCut).Tube, sizes);
        Together(page, build, fitUp, cuts);
        Chart(page, build, build.Exact, cancellationToken);
        Trimming(page, build, units, cancellationToken);
        Care(page, CautionStep.Playing, CautionStep.Hygiene);
        var hasHoles = build.Exact.Tube.Holes.Count > 0;
        if (hasHoles)
        {
            HoleChapter.Add(page, build, sizes, cancellationToken);
        }

        Sure(page, build, fitUp);
        page.Heading(SheetWords.WhatIf);
        page.List(WhatIf.Of(build, units, cancellationToken));
        page.Heading(SheetWords.Finishing);
        Care(page, hasHoles ? [CautionStep.Paint] : [CautionStep.Paint, CautionStep.Drilling]);
        return page.ToString();
    }

    // Where the work is that they are about.
    private static void Care(HtmlPage page, params CautionStep[] steps) =>
        page.Cautions(steps.Select(Cautions.For), SheetWords.Source);

    private static List<NamedCut> CutsOf(TubeBuild build, LengthUnits units) =>
        [
            .. build.CutList.Select(
                (cut, i) =>
                    new NamedCut(NamedCut.LetterOf(i), cut.Pipe, SheetWords.Choices(cut.Length.In(units)))
            ),
        ];

    private static void FirstCut(HtmlPage page, TubeBuild build, Sizes sizes, List<NamedCut> cuts)
    {
        var first = cuts.Single(cut => cut.Pipe.Cut is null);
        page.First(
            SheetWords.FirstCut(first.Pipe, first.Letter),
            first.Sizes,
            SheetWords.Or,
            SheetWords.ThenTrim(sizes.Tape(build.Exact!.Cut))
        );
    }

    private static void Cuts(HtmlPage page, TubeBuild build, LengthUnits units, List<NamedCut> cuts)
    {
        var sizes = new Sizes(units);
        page.Heading(SheetWords.CutList);
        page.Table(
            SheetWords.CutListCaption,
            SheetWords.CutHead,
            cuts.Select(cut =>
                new[]
                {
                    cut.Letter,
                    cut.Pipe.Name,
                    string.Join($" {SheetWords.Or} ", cut.Sizes),
                    cut.Pipe.Cut is null ? sizes.Tape(build.Exact!.Cut) : SheetWords.AsGiven,
                }
            )
        );
        page.Paragraph(SheetWords.Kerf(build.WholeMillimetre!, build.WholeSixteenth!, units));
        page.Paragraph($"{SheetWords.Cautions}: {Cautions.First}");
        Care(
            page,
            CautionStep.Pipe,
            CautionStep.Cutting,
            CautionStep.Hearing,
            CautionStep.Dust,
            CautionStep.Edges
        );
        if (FitUp.HasMetal(build.Assembly))
        {
            Care(page, CautionStep.Metal);
        }
    }

    private static void Bore(HtmlPage page, AssembledTube tube, Sizes sizes)
    {
        page.Heading(SheetWords.Bore);
        var rows = tube
            .Bore.Sections.Select(
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
            .ToList();
        var (drawing, note) = BoreDrawing.Of(
            tube,
            sizes,
            [.. rows.Select((row, i) => SheetWords.Section(i + 1, row[1], row[2], row[3]))]
        );
        page.Figure(drawing, note);
        page.Table(SheetWords.BoreCaption, SheetWords.BoreHead, rows);
        page.Note(SheetWords.BoreNote);
    }

    private static void Together(HtmlPage page, TubeBuild build, FitUp fitUp, List<NamedCut> cuts)
    {
        var plastic = FitUp.HasPlastic(build.Assembly);
        page.Heading(SheetWords.FitUp);
        if (FitUp.NeedsHeat(build.Assembly))
        {
            Care(page, CautionStep.Heating);
            page.Cautions(FitUp.HeatCautions(build.Assembly), SheetWords.Source);
        }

        page.Note(SheetWords.StepsNote);
        page.Steps(fitUp.Steps(build.Assembly, cuts));
        page.Note(SheetWords.DryFirst);
        if (FitUp.IsJoined(build.Assembly) && plastic)
        {
            Care(page, CautionStep.SolventCement);
        }
    }

    private static void Chart(
        HtmlPage page,
        TubeBuild build,
        BuiltTube exact,
        CancellationToken cancellationToken
    )
    {
        page.Heading(SheetWords.Chart);
        page.Figure(
            ImpedanceChart.Of(build.Note, build.Tuning, exact, build.Resonances!, cancellationToken),
            SheetWords.ChartNote
        );
        page.Table(
            SheetWords.ChartCaption,
            SheetWords.ChartHead,
            ImpedanceChart
                .Peaks(build.Tuning, exact, build.Resonances!)
                .Select(peak =>
                    new[]
                    {
                        SheetWords.PeakNumber(peak),
                        SheetWords.PeakHertz(peak),
                        SheetWords.PeakNote(peak),
                        SheetWords.Level(peak),
                        SheetWords.Quality(peak),
                    }
                )
        );
    }

    private static void Trimming(
        HtmlPage page,
        TubeBuild build,
        LengthUnits units,
        CancellationToken cancellationToken
    )
    {
        page.Heading(SheetWords.Trim);
        page.Paragraph(SheetWords.TrimNote);
        var dry = build.Dry(cancellationToken);
        if (dry is not null)
        {
            page.Remark($"{SheetWords.Note}: {new DryWords(new Sizes(units)).Tuning(dry)}");
        }

        if (FitUp.IsFormedFromOpenPipe(build.Assembly))
        {
            page.Paragraph(SheetWords.TrimAtTheLips);
        }

        // From the first cut on a tape: rows in sixteenths are their own, not those in millimetres rounded.
        var hidden = build.FirstCut!.Tube.FreeCut!.Hidden.Millimeters;
        LengthUnits[] tapes =
            units == LengthUnits.Both ? [LengthUnits.Millimetres, LengthUnits.Inches] : [units];
        foreach (var tape in tapes)
        {
            var sizes = new Sizes(tape);
            var table =
                tape == LengthUnits.Inches
                    ? build.TrimInches(cancellationToken)
                    : build.Trim(cancellationToken);
            page.Table(
                tape == LengthUnits.Inches ? SheetWords.TrimCaptionInches : SheetWords.TrimCaptionMillimetres,
                dry is null ? SheetWords.TrimHead : DryWords.TrimHead,
                table!.Rows.Select(row =>
                    (string[])
                        [
                            sizes.Tape(row.Cut),
                            sizes.Tape(Length.FromMillimeters(row.Length.Millimeters + hidden)),
                            SheetWords.Hertz(row.Note),
                            SheetWords.FromTheNote(row.Cents, row.PlusMinusCents),
                            // What lies between dry and home hardly changes while a few centimetres are cut off.
                            .. dry is not null
                                ? [SheetWords.Hertz(row.Note * Cents.ToRatio(-dry.CentsToHome))]
                                : Array.Empty<string>(),
                        ]
                )
            );
        }
    }

    private static void Sure(HtmlPage page, TubeBuild build, FitUp fitUp)
    {
        page.Heading(SheetWords.Sure);
        var budget = build.Budget!;
        page.Paragraph(SheetWords.SureTo(budget.PlusMinusCents));
        page.Table(
            SheetWords.SureCaption,
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
