using System.Buffers.Binary;
using AirColumn.Tests.Pitches;
using SkiaSharp;

namespace AirColumn.Plots.Tests;

/// <summary>What holds for every kind of picture.</summary>
public class PictureTests
{
    public static TheoryData<string> Kinds => [.. Columns.Pictures.Keys];

    public static TheoryData<string, string> KindsAndSizes
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var kind in Columns.Pictures.Keys)
            {
                data.Add(kind, "screen");
                data.Add(kind, "paper");
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(KindsAndSizes))]
    public void A_png_decodes_at_its_size_and_is_not_blank(string kind, string size)
    {
        var picture = At(kind, size);
        using var bitmap = SKBitmap.Decode(picture.Png());
        Assert.Equal((picture.PixelWidth, picture.PixelHeight), (bitmap.Width, bitmap.Height));
        Assert.Equal(size == "paper" ? 1417 : 880, bitmap.Width); // 120 mm at 300 to the inch
        var colors = bitmap.Pixels.Distinct().Count();
        Assert.True(colors > 50, $"Only {colors} colours.");
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Threads_may_share_it(string kind)
    {
        var (svg, png) = (Columns.Pictures[kind].Svg(), Columns.Pictures[kind].Png());
        Parallel.For(
            0,
            4,
            _ =>
            {
                Assert.Equal(svg, Columns.Pictures[kind].Svg());
                Assert.Equal(png, Columns.Pictures[kind].Png());
            }
        );
    }

    // A label that reaches beyond the edge is cut off there.
    [Theory]
    [MemberData(nameof(KindsAndSizes))]
    public void Nothing_touches_the_edge(string kind, string size)
    {
        using var bitmap = SKBitmap.Decode(At(kind, size).Png());
        var edge = Enumerable
            .Range(0, bitmap.Width)
            .SelectMany(x => new[] { bitmap.GetPixel(x, 0), bitmap.GetPixel(x, bitmap.Height - 1) })
            .Concat(
                Enumerable
                    .Range(0, bitmap.Height)
                    .SelectMany(y => new[] { bitmap.GetPixel(0, y), bitmap.GetPixel(bitmap.Width - 1, y) })
            );
        Assert.All(edge, pixel => Assert.Equal(SKColors.White, pixel));
    }

    [Theory]
    [MemberData(nameof(KindsAndSizes))]
    public void Texts_do_not_run_into_each_other(string kind, string size)
    {
        var boxes = new Drawn(At(kind, size)).TextBoxes;
        Assert.NotEmpty(boxes);
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                Assert.False(
                    boxes[i].Box.IntersectsWith(boxes[j].Box),
                    $"“{boxes[i].Text}” and “{boxes[j].Text}” overlap."
                );
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_same_values_give_the_same_picture_in_every_culture(string kind)
    {
        var (svg, png) = (Columns.Pictures[kind].Svg(), Columns.Pictures[kind].Png());
        Assert.Equal(svg, Columns.Pictures[kind].Svg());
        foreach (var culture in (string[])["de-DE", "tr-TR", "ar-SA"])
        {
            Culture.Run(
                culture,
                () =>
                {
                    Assert.Equal(svg, Columns.Pictures[kind].Svg());
                    Assert.Equal(png, Columns.Pictures[kind].Png());
                }
            );
        }
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void A_picture_made_in_another_country_reads_the_same(string culture) =>
        Culture.Run(
            culture,
            () =>
            {
                Assert.Equal(Columns.Pictures["tuning"].Svg(), TuningPicture.Of(Horn5()).Svg());
                Assert.Equal(Columns.Pictures["impedance"].Svg(), ImpedancePicture.Of(Columns.Horn).Svg());
                Assert.Equal(Columns.Pictures["bore"].Svg(), BorePicture.Of(Columns.Horn.Bore).Svg());
                Assert.Equal(Columns.Pictures["budget"].Svg(), BudgetPicture.Of(Columns.Budgets[0]).Svg());
            }
        );

    // A machine without fonts draws none of the characters that the bundled one lacks.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_character_is_in_the_bundled_font(string kind)
    {
        var typeface = Drawing.OpenFont.Typeface(false);
        Assert.Equal("Atkinson Hyperlegible", typeface.FamilyName);
        var drawn = new Drawn(Columns.Pictures[kind]);
        foreach (var text in drawn.Texts)
        {
            Assert.All(text, letter => Assert.True(typeface.ContainsGlyph(letter), $"{letter} of {text}"));
        }

        Assert.All(
            drawn.Named("text"),
            text =>
                Assert.StartsWith(
                    "'Atkinson Hyperlegible'",
                    (string)text.Attribute("font-family")!,
                    StringComparison.Ordinal
                )
        );
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void An_svg_says_what_it_shows_and_how_large_it_is(string kind)
    {
        var picture = Columns.Pictures[kind];
        var drawn = new Drawn(picture);
        Assert.Equal(picture.Description, drawn.Title);
        Assert.True(picture.Description.Length > 20, picture.Description);
        Assert.Equal(
            FormattableString.Invariant($"0 0 {picture.Width} {picture.Height}"),
            (string?)drawn.Root.Attribute("viewBox")
        );
    }

    [Fact]
    public void A_size_that_was_asked_for_is_kept()
    {
        var asked = Columns.Pictures["impedance"].At(PictureSize.OnScreen(640, 360).AtScale(2));
        Assert.Equal((640, 360), (asked.Width, asked.Height));
        var png = asked.Png();
        Assert.Equal(1280, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        Assert.Equal(720, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
    }

    [Theory]
    [InlineData("bore.svg", "<svg")]
    [InlineData("bore.PNG", "PNG")]
    public void Saves_what_the_ending_says(string name, string holds)
    {
        var folder = Directory.CreateTempSubdirectory("aircolumn-plots-").FullName;
        try
        {
            var path = Path.Combine(folder, name);
            Columns.Pictures["bore"].Save(path);
            Assert.Contains(holds, File.ReadAllText(path)[..80], StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    [Fact]
    public void Another_ending_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => Columns.Pictures["bore"].Save("bore.gif"));
        Assert.Contains(".svg or .png", error.Message, StringComparison.Ordinal);
    }

    private static ResonanceList Horn5() => Columns.Horn.FirstResonances(5);

    private static Picture At(string kind, string size) =>
        Columns.Pictures[kind].At(size == "paper" ? PictureSize.Paper : PictureSize.Screen);
}
