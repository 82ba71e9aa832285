using System.Xml.Linq;
using AirColumn.Pitches;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tests.Tubes;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Tests.Sheets;

public class BuildSheetTests
{
    private static readonly TubeBuild Build = TubeBuilder.Plan(
        TubeBuilderTests.Stepped,
        Pitch.Parse("D2"),
        Tuning.Concert,
        TubeBuilderTests.Room
    );

    private static readonly string Page = BuildSheet.Html(Build, "Tube & <friends>");

    [Fact]
    public void All_that_the_bench_needs_is_on_it()
    {
        foreach (
            var heading in new[]
            {
                "The bore, from the lips",
                "Cut list",
                "Putting it together",
                "Where it resonates",
                "Trimming",
                "How sure",
                "What if",
                "Finishing",
            }
        )
        {
            Assert.Contains($"<h2>{heading}</h2>", Page, StringComparison.Ordinal);
        }

        Assert.Contains(
            FormattableString.Invariant($"<td>{Build.FirstCut!.Cut.Millimeters:0.#} mm or "),
            Page,
            StringComparison.Ordinal
        );
        Assert.Contains(InchFraction.Describe(Build.FirstCutInches!.Cut), Page, StringComparison.Ordinal);
        // Nothing of this tube is formed by heat.
        Assert.DoesNotContain("Heating plastic", Page, StringComparison.Ordinal);
        Assert.All(
            Cautions.All.Where(caution => caution.Step is not (CautionStep.Heating or CautionStep.Metal)),
            caution =>
                Assert.Contains(
                    System.Net.WebUtility.HtmlEncode(caution.Text),
                    Page,
                    StringComparison.Ordinal
                )
        );
        Assert.Contains(Cautions.First, Page, StringComparison.Ordinal);
    }

    // Well formed, so that every browser reads it alike; nothing from elsewhere; texts escaped.
    [Fact]
    public void The_page_stands_by_itself()
    {
        var body = Page[
            Page.IndexOf("<body>", StringComparison.Ordinal)..Page.IndexOf(
                "</html>",
                StringComparison.Ordinal
            )
        ];
        var document = XDocument.Parse(body);
        Assert.NotNull(document.Root);
        Assert.Contains("<h1>Tube &amp; &lt;friends&gt;</h1>", Page, StringComparison.Ordinal);
        Assert.DoesNotContain("http", Page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", Page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", Page, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', Page);
    }

    // The drawing is to scale: the outline is as long as the ruler, and its steps are where the sections end.
    [Fact]
    public void The_drawing_is_to_scale()
    {
        var start =
            Page.IndexOf("class=\"bore\" d=\"M", StringComparison.Ordinal) + "class=\"bore\" d=\"M".Length;
        var outline = Page[start..Page.IndexOf(" Z", start, StringComparison.Ordinal)];
        var points = outline
            .Split(' ')
            .Select(point => point.Split(','))
            .Select(xy =>
                (
                    X: double.Parse(xy[0], System.Globalization.CultureInfo.InvariantCulture),
                    Y: double.Parse(xy[1], System.Globalization.CultureInfo.InvariantCulture)
                )
            )
            .ToList();
        var bore = Build.FirstCut!.Tube.Bore;
        // There above the axis and back below it.
        Assert.Equal(4 * bore.Sections.Count, points.Count);
        var scale = (points.Max(p => p.X) - points[0].X) / bore.Length.Millimeters;
        var x = 0.0;
        for (var i = 0; i < bore.Sections.Count; i++)
        {
            Assert.Equal(points[0].X + scale * x, points[2 * i].X, 0.02);
            x += bore.Sections[i].Length.Millimeters;
            Assert.Equal(points[0].X + scale * x, points[2 * i + 1].X, 0.02);
        }
    }

    [Fact]
    public void Lengths_are_written_in_the_units_that_were_asked_for()
    {
        var metric = BuildSheet.Html(Build, "", LengthUnits.Millimetres);
        var inches = BuildSheet.Html(Build, "", LengthUnits.Inches);
        var cut = FormattableString.Invariant($"{Build.FirstCut!.Cut.Millimeters:0.#} mm");
        var cutInches = InchFraction.Describe(Build.FirstCutInches!.Cut);
        Assert.Contains($"<td>{cut}</td>", metric, StringComparison.Ordinal);
        Assert.DoesNotContain($"<td>{cutInches}</td>", metric, StringComparison.Ordinal);
        Assert.Contains($"<td>{cutInches}</td>", inches, StringComparison.Ordinal);
        Assert.DoesNotContain(" mm (", inches, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => BuildSheet.Html(Build, "", (LengthUnits)7));
    }

    // A wide short tube has its length cut down, not its height.
    [Fact]
    public void A_wide_bore_is_drawn_to_scale_too()
    {
        var wide = BuildSheet.Html(Plan(new PipePart("p", Mm(100), Mm(108), null), "D4"), "");
        Assert.Contains("Drawn to scale.", wide, StringComparison.Ordinal);
        var start =
            wide.IndexOf("class=\"bore\" d=\"M", StringComparison.Ordinal) + "class=\"bore\" d=\"M".Length;
        var corners = wide[start..wide.IndexOf(" Z", start, StringComparison.Ordinal)]
            .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(corner =>
                corner
                    .Split(',')
                    .Select(x => double.Parse(x, System.Globalization.CultureInfo.InvariantCulture))
                    .ToArray()
            )
            .ToList();
        var length = Plan(new PipePart("p", Mm(100), Mm(108), null), "D4").FirstCut!.Cut.Millimeters;
        Assert.Equal(
            length / 100,
            (corners.Max(c => c[0]) - corners.Min(c => c[0]))
                / (corners.Max(c => c[1]) - corners.Min(c => c[1])),
            0.01
        );
    }

    [Fact]
    public void Cautions_are_those_of_the_work_at_hand()
    {
        var bare = BuildSheet.Html(Plan(new PipePart("p", Mm(40), Mm(48), null), "D2"), "");
        Assert.DoesNotContain("Solvent cement", bare, StringComparison.Ordinal);
        var copper = BuildSheet.Html(
            Plan(
                PipePart.Of(
                    "p",
                    AirColumn.Workshop.Stock.Catalogue.Standard.Pipe("copper-l 1-1/2"),
                    null,
                    null
                ),
                "D2"
            ),
            ""
        );
        Assert.Contains("Metal pipe: Cut edges are sharp", copper, StringComparison.Ordinal);
        Assert.DoesNotContain("Heating plastic", copper, StringComparison.Ordinal);
        var belled = BuildSheet.Html(
            TubeBuilder.Plan(
                new TubeAssembly([
                    new PipePart("p", Mm(40), Mm(48), null),
                    new BellPart("bell", Mm(70), Mm(80)),
                ]),
                Pitch.Parse("D2"),
                Tuning.Concert,
                TubeBuilderTests.Room
            ),
            ""
        );
        Assert.Contains("Heating plastic", belled, StringComparison.Ordinal);
        Assert.Contains("read its maker&#39;s limits", belled, StringComparison.Ordinal);
        Assert.DoesNotContain("PVC softens", belled, StringComparison.Ordinal);
        Assert.Contains("trim the pipe at the end where the lips go", belled, StringComparison.Ordinal);
    }

    private static TubeBuild Plan(PipePart pipe, string note) =>
        TubeBuilder.Plan(new TubeAssembly([pipe]), Pitch.Parse(note), Tuning.Concert, TubeBuilderTests.Room);

    private static UnitsNet.Length Mm(double value) => UnitsNet.Length.FromMillimeters(value);

    // Read back with the reader of the same library: what the page says stands in the PDF too.
    [Fact]
    public void The_pdf_says_what_the_page_says()
    {
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(
            BuildSheet.Pdf(Build, "Tube of Žofie", LengthUnits.Both)
        );
        var text = string.Join(
            ' ',
            pdf.GetPages().Select(page => string.Join(' ', page.GetWords().Select(word => word.Text)))
        );
        foreach (
            var words in new[]
            {
                "Cut list",
                "Where it resonates",
                "How sure",
                "Clamp the pipe",
                FormattableString.Invariant(
                    $"{Build.FirstCut!.Cut.Millimeters:0.#} mm or {InchFraction.Describe(Build.FirstCutInches!.Cut)}"
                ),
                FormattableString.Invariant($"within +/-{Build.Budget!.PlusMinusCents:0.#} cents"),
                "+/- 3 deg C",
                "Tube of Zofie",
            }
        )
        {
            Assert.Contains(words, text, StringComparison.Ordinal);
        }

        Assert.DoesNotContain('?', text.Replace("Light-headed?", "", StringComparison.Ordinal));
        Assert.InRange(pdf.NumberOfPages, 1, 3);
        // Nothing is written beyond the paper.
        Assert.All(
            pdf.GetPages().SelectMany(page => page.Letters.Select(letter => (letter, page))),
            item =>
            {
                Assert.InRange(item.letter.StartBaseLine.X, 30, item.page.Width - 30);
                Assert.InRange(item.letter.EndBaseLine.X, 30, item.page.Width - 30);
                Assert.InRange(item.letter.StartBaseLine.Y, 30, item.page.Height - 30);
            }
        );
    }

    [Fact]
    public void Without_a_solution_there_is_no_sheet()
    {
        var unsolved = TubeBuilder.Plan(
            TubeBuilderTests.Stepped,
            Pitch.Parse("C6"),
            Tuning.Concert,
            TubeBuilderTests.Room
        );
        Assert.Throws<ArgumentException>(() => BuildSheet.Html(unsolved, ""));
    }
}
