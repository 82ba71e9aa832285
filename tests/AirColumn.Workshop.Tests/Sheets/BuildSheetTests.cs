using System.Text.RegularExpressions;
using System.Xml.Linq;
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
            FormattableString.Invariant($"{Build.FirstCut!.Cut.Millimeters:0.#} mm or "),
            Text(Page),
            StringComparison.Ordinal
        );
        Assert.Contains(InchFraction.Describe(Build.FirstCutInches!.Cut), Page, StringComparison.Ordinal);
        // Nothing of this tube is formed by heat.
        Assert.DoesNotContain("Heating plastic", Page, StringComparison.Ordinal);
        Assert.All(
            Cautions.All.Where(caution => caution.Step is not (CautionStep.Heating or CautionStep.Metal)),
            caution => Assert.Contains(caution.Text, Text(Page), StringComparison.Ordinal)
        );
        Assert.Contains(Cautions.First, Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_title_the_note_stands_above_it() =>
        Assert.Equal(BuildSheet.Html(Build, BuildSheet.Title("", Build.Note)), BuildSheet.Html(Build, ""));

    // Down the page: what is in parentheses stands below what it explains.
    [Fact]
    public void Inches_stand_below_their_millimetres()
    {
        var pairs = Regex.Matches(
            Page,
            """<text class="middle" x="([^"]*)" y="([^"]*)">[^<(]*</text>\n<text class="middle" x="\1" y="([^"]*)">\("""
        );
        Assert.NotEmpty(pairs);
        Assert.All(pairs, pair => Assert.True(Number(pair.Groups[3]) > Number(pair.Groups[2]), pair.Value));

        static double Number(Group text) =>
            double.Parse(text.ValueSpan, System.Globalization.CultureInfo.InvariantCulture);
    }

    // Well formed, so that every browser reads it alike; nothing from elsewhere; texts escaped.
    [Fact]
    public void The_page_stands_by_itself()
    {
        Assert.NotNull(Body(Page));
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
        Assert.Contains(
            $"first to{cut}",
            Text(metric).Replace("\n", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(cutInches, Text(metric), StringComparison.Ordinal);
        Assert.Contains(
            $"first to{cutInches}",
            Text(inches).Replace("\n", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(" mm (", Text(inches), StringComparison.Ordinal);
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
        Assert.Contains("Metal pipe. Cut edges are sharp", Text(copper), StringComparison.Ordinal);
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
        Assert.Contains("read its maker's limits", belled, StringComparison.Ordinal);
        Assert.DoesNotContain("PVC softens", belled, StringComparison.Ordinal);
        Assert.Contains("trim the pipe at the end where the lips go", belled, StringComparison.Ordinal);
    }

    private static TubeBuild Plan(PipePart pipe, string note) =>
        TubeBuilder.Plan(new TubeAssembly([pipe]), Pitch.Parse(note), Tuning.Concert, TubeBuilderTests.Room);

    private static UnitsNet.Length Mm(double value) => UnitsNet.Length.FromMillimeters(value);

    // Signs of any script are letters, and what looks like markup is text.
    [Fact]
    public void Letters_of_every_script_stay()
    {
        const string Name = "Žofie's \"tube\" 長い & <b>";
        var page = BuildSheet.Html(Build, Name);
        Assert.Contains(
            "<h1>Žofie's &quot;tube&quot; 長い &amp; &lt;b&gt;</h1>",
            page,
            StringComparison.Ordinal
        );
        Assert.Contains(Name, Text(page), StringComparison.Ordinal);
    }

    // Each has a name, and says with numbers what it shows.
    [Fact]
    public void Every_picture_says_what_it_shows()
    {
        var pictures = Body(Page).Descendants("svg").ToList();
        Assert.All(
            pictures,
            picture =>
            {
                var (label, data) = (picture.Element("title")!, picture.Element("desc")!);
                Assert.Equal((string?)picture.Attribute("aria-labelledby"), (string?)label.Attribute("id"));
                Assert.Equal((string?)picture.Attribute("aria-describedby"), (string?)data.Attribute("id"));
                Assert.NotEmpty(label.Value);
                Assert.Contains(data.Value, char.IsDigit);
            }
        );
        Assert.Equal(
            pictures.Count,
            pictures.Select(picture => picture.Attribute("aria-labelledby")!.Value).Distinct().Count()
        );
        // Every resonance of the chart is in its description.
        Assert.All(
            Build.Resonances!,
            resonance =>
                Assert.Contains(
                    FormattableString.Invariant($"{resonance.Frequency.Hertz:0.00} Hz"),
                    pictures[^1].Element("desc")!.Value,
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void Every_step_has_its_picture_and_names_its_cut()
    {
        var steps = Body(Page)
            .Descendants("ol")
            .Single(list => (string?)list.Attribute("class") == "steps")
            .Elements("li")
            .ToList();
        // Of this tube: as many cuts as pipes first, then what is joined.
        var pipes = Build.Assembly.Parts.OfType<PipePart>().ToList();
        Assert.True(steps.Count > pipes.Count);
        for (var i = 0; i < steps.Count; i++)
        {
            var picture = Assert.Single(steps[i].Elements("svg"));
            var uses = steps[i]
                .Descendants("p")
                .Single(text => (string?)text.Attribute("class") == "uses")
                .Value;
            var letter = uses["Uses cut ".Length..][..1];
            Assert.Contains(picture.Elements("text"), text => text.Value == letter);
            Assert.Equal($"Uses cut {letter}: {pipes[letter[0] - 'A'].Name}.", uses);
            Assert.Equal(
                i < pipes.Count,
                steps[i].Value.Contains("square, and deburr", StringComparison.Ordinal)
            );
        }
    }

    [Fact]
    public void The_first_cut_stands_first_and_fractions_hold_together()
    {
        var body = Body(Page);
        var first = body.Descendants().First(element => (string?)element.Attribute("class") == "cut");
        var (millimetre, inches) = (
            FormattableString.Invariant($"{Build.FirstCut!.Cut.Millimeters:0.#} mm"),
            InchFraction.Describe(Build.FirstCutInches!.Cut)
        );
        Assert.Equal([millimetre, inches], Whole(first));
        Assert.DoesNotContain("mm", string.Concat(first.NodesBeforeSelf()), StringComparison.Ordinal);
        var whole = body.Descendants().SelectMany(Whole).ToHashSet();
        // Whatever is a fraction of an inch in the text of the page stands in one piece that is not broken.
        body.Descendants("svg").Remove();
        foreach (Match fraction in Regex.Matches(body.Value, @"\d+ \d+/\d+ in"))
        {
            Assert.Contains(whole, text => text.Contains(fraction.Value, StringComparison.Ordinal));
        }

        static IEnumerable<string> Whole(XElement element) =>
            element
                .Descendants("span")
                .Where(span => (string?)span.Attribute("class") == "q")
                .Select(span => span.Value);
    }

    // An arc of 90° about 100 mm is 157.08 mm of pipe.
    [Fact]
    public void A_bend_is_drawn_bent_between_marks_of_heat()
    {
        var page = BuildSheet.Html(
            TubeBuilder.Plan(
                new TubeAssembly([
                    new PipePart("leg", Mm(40), Mm(48), null),
                    new BendPart("knee", Mm(100), UnitsNet.Angle.FromDegrees(90), Mm(300)),
                ]),
                Pitch.Parse("D2"),
                Tuning.Concert,
                TubeBuilderTests.Room
            ),
            "",
            LengthUnits.Millimetres
        );
        Assert.Contains(
            "Mark the leg 300 mm and 457.1 mm from its far end.",
            Text(page),
            StringComparison.Ordinal
        );
        Assert.Contains("Drawn to scale. Bends are drawn in one plane", Text(page), StringComparison.Ordinal);
        var view = Body(page).Descendants("svg").First();
        Assert.Equal(2, view.Elements("polyline").Count(line => (string?)line.Attribute("class") == "mark"));
        // One end points along the page, the other down it: as far across as the leg after the bend and its radius.
        var axis = Points(
            (string)
                view.Elements("polyline")
                    .Single(line => (string?)line.Attribute("class") == "axis")
                    .Attribute("points")!
        );
        var bore = axis[^1];
        var scale = (axis[^1].Y - axis[^2].Y) / 300;
        Assert.Equal(axis[^1].X, axis[^2].X, 0.02);
        Assert.Equal(axis[0].Y, axis[1].Y, 0.02);
        Assert.Equal(400 * scale, bore.Y - axis[0].Y, 0.5);
    }

    // At least 4.5 to 1 between a text and what it stands on (WCAG 2.2, 1.4.3), 3 to 1 between lines and what they stand on (1.4.11).
    [Fact]
    public void Everything_can_be_told_from_what_it_stands_on()
    {
        var themes = Regex
            .Matches(Page, @":root \{([^}]*)\}")
            .Select(theme =>
                Regex
                    .Matches(theme.Groups[1].Value, @"--(\w+): (#[0-9a-f]{6});")
                    .ToDictionary(
                        colour => colour.Groups[1].Value,
                        colour => Luminance(colour.Groups[2].Value)
                    )
            )
            .ToList();
        Assert.Equal(3, themes.Count);
        foreach (var theme in themes)
        {
            foreach (
                var (text, ground) in new[]
                {
                    ("ink", "paper"),
                    ("ink", "card"),
                    ("ink", "bore"),
                    ("ink", "glow"),
                    ("soft", "paper"),
                    ("brass", "paper"),
                    ("sea", "paper"),
                    ("sea", "card"),
                    ("soft", "card"),
                    ("warnink", "warn"),
                    ("warn", "heat"),
                }
            )
            {
                Assert.True(Ratio(theme[text], theme[ground]) >= 4.5, $"{text} on {ground}");
            }

            foreach (
                var (line, ground) in new[]
                {
                    ("sea", "bore"),
                    ("heat", "glow"),
                    ("heat", "paper"),
                    ("brass", "bore"),
                    ("heat", "warn"),
                }
            )
            {
                Assert.True(Ratio(theme[line], theme[ground]) >= 3, $"{line} on {ground}");
            }
        }

        static double Ratio(double a, double b) => (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);

        // WCAG 2.2, relative luminance of sRGB.
        static double Luminance(string hex)
        {
            var linear = Enumerable
                .Range(0, 3)
                .Select(i => Convert.ToInt32(hex.Substring(1 + 2 * i, 2), 16) / 255.0)
                .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4))
                .ToArray();
            return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
        }
    }

    private static XElement Body(string page)
    {
        var start = page.IndexOf("<body>", StringComparison.Ordinal);
        return XDocument
            .Parse(
                page[start..page.IndexOf("</html>", StringComparison.Ordinal)]
                    .Replace("<wbr>", "", StringComparison.Ordinal),
                LoadOptions.PreserveWhitespace
            )
            .Root!;
    }

    private static string Text(string page) => Body(page).Value;

    private static List<(double X, double Y)> Points(string list) =>
        [
            .. list.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(point => point.Split(','))
                .Select(xy =>
                    (
                        double.Parse(xy[0], System.Globalization.CultureInfo.InvariantCulture),
                        double.Parse(xy[1], System.Globalization.CultureInfo.InvariantCulture)
                    )
                ),
        ];

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
