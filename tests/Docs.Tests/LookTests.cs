using System.Globalization;
using System.Text.RegularExpressions;

namespace Docs.Tests;

/// <summary>One look: pictures, build sheet and bench page have the same colours and typeface, and their text can be read.</summary>
public partial class LookTests
{
    // WCAG 2.2, success criterion 1.4.3: the contrast of text.
    private const double Readable = 4.5;

    private static readonly string Sheet = Read("src/AirColumn.Workshop/Sheets/SheetStyle.cs");

    private static readonly string Bench = Read("samples/BenchPage/wwwroot/css/bench.css");

    private static readonly string Pictures = Read("src/AirColumn.Plots/Drawing/Palette.cs");

    // By day, by night.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Sheet_and_bench_have_the_same_colours(int which)
    {
        var (sheet, bench) = (Colours(Sheet, which), Colours(Bench, which));
        Assert.True(sheet.Count > 10);
        Assert.All(sheet, colour => Assert.Equal(colour.Value, bench[colour.Key]));
    }

    [Fact]
    public void Pictures_have_those_of_the_sheet_by_day()
    {
        var day = Colours(Sheet, 0);
        var named = Named().Matches(Pictures);
        Assert.Equal(6, named.Count);
        Assert.All(
            named,
            match => Assert.Equal(day[match.Groups[2].Value], match.Groups[1].Value, ignoreCase: true)
        );
    }

    [Theory]
    [InlineData("src/AirColumn.Workshop/Sheets/SheetStyle.cs")]
    [InlineData("src/AirColumn.Workshop/Sheets/TemplatePage.cs")]
    [InlineData("samples/BenchPage/wwwroot/css/bench.css")]
    public void All_ask_for_the_typeface_of_the_pictures_first(string file)
    {
        var text = Read(file);
        Assert.Equal(
            Regex.Count(text, "system-ui"),
            Regex.Count(text, "'Atkinson Hyperlegible', system-ui, sans-serif")
        );
    }

    // By day, by night, in print.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Text_stands_out_from_what_is_behind_it(int which)
    {
        (string Text, string Behind)[] pairs =
        [
            ("ink", "paper"),
            ("ink", "card"),
            ("ink", "bore"),
            ("soft", "paper"),
            ("soft", "card"),
            ("brass", "paper"),
            ("sea", "paper"),
            ("sea", "card"),
            ("heat", "paper"),
            ("warnink", "warn"),
            ("warn", "heat"),
        ];
        foreach (var css in new[] { Sheet, Bench })
        {
            var colours = Colours(css, which);
            Assert.All(
                pairs,
                pair => Assert.InRange(Contrast(colours[pair.Text], colours[pair.Behind]), Readable, 21)
            );
        }
    }

    [Fact]
    public void Text_in_pictures_stands_out_from_white() =>
        Assert.All(
            (string[])["Blue", "VermilionText", "GreenText", "Ink", "Quiet"],
            name =>
                Assert.InRange(
                    Contrast(
                        Regex.Match(Pictures, $"Color {name} {{.*?\"(#[0-9A-F]{{6}})\"").Groups[1].Value,
                        "#FFFFFF"
                    ),
                    Readable,
                    21
                )
        );

    // WCAG 2.2, relative luminance and contrast ratio; its worked extremes are 21 for black on white and 1 for equal colours.
    [Theory]
    [InlineData("#000000", "#ffffff", 21)]
    [InlineData("#ffffff", "#ffffff", 1)]
    public void Contrast_is_that_of_the_guideline(string one, string other, double ratio) =>
        Assert.Equal(ratio, Contrast(one, other), 1e-9);

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        return 0.2126 * Part(1) + 0.7152 * Part(3) + 0.0722 * Part(5);

        double Part(int at)
        {
            var share =
                int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
        }
    }

    private static Dictionary<string, string> Colours(string css, int which) =>
        Variable()
            .Matches(Root().Matches(css)[which].Value)
            .ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);

    private static string Read(string file) => File.ReadAllText(Repository.File(file));

    [GeneratedRegex(@":root \{[^}]*\}")]
    private static partial Regex Root();

    [GeneratedRegex("--([a-z]+): (#[0-9a-f]{6})")]
    private static partial Regex Variable();

    [GeneratedRegex("FromHex\\(\"(#[0-9A-F]{6})\"\\); // --([a-z]+)")]
    private static partial Regex Named();
}
