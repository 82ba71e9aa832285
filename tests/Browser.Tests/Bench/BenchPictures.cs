using System.Buffers.Binary;

namespace Browser.Tests.Bench;

/// <summary>The pictures of docs/bench: taken here, and written there when asked for.</summary>
[Collection(BenchTests.Name)]
public class BenchPictures(BenchBrowser browser)
{
    private const int Largest = 250_000; // bytes

    private static readonly string Folder = Path.Combine(Sheet.Top, "docs", "bench");

    [BrowserTheory]
    [InlineData("desk.png", 1280, 900, false, "")]
    [InlineData("phone.png", 360, 740, false, "")]
    [InlineData("phone-dark.png", 360, 740, true, "")]
    [InlineData("flute.png", 1280, 900, false, "Flute")]
    public async Task Pictures_show_the_page(string file, int width, int height, bool isDark, string begin)
    {
        await using var visit = await browser.Visit(width, isDark);
        await visit.Page.SetViewportSizeAsync(width, height);
        if (begin.Length > 0)
        {
            await visit.Press(begin);
            await visit.Press("Place the holes");
            await visit.Page.Locator(".holes").WaitForAsync();
        }
        else
        {
            await visit.Page.ClickAsync("#part-1 .card-title");
        }

        await Write(visit, file, height);
        visit.NothingWentWrong();
    }

    /// <summary>Takes a picture of what is seen, and compares its size with that of the one that is kept.</summary>
    internal static async Task Write(BenchVisit visit, string file, int height)
    {
        var width = visit.Page.ViewportSize!.Width;
        await visit.Page.SetViewportSizeAsync(width, height);
        var picture = await visit.Page.ScreenshotAsync();
        Assert.InRange(picture.Length, 10_000, Largest);
        var path = Path.Combine(Folder, file);
        if (Environment.GetEnvironmentVariable("AIRCOLUMN_PICTURES") == "write")
        {
            Directory.CreateDirectory(Folder);
            await File.WriteAllBytesAsync(path, picture);
        }

        Assert.Equal(Size(picture), Size(await File.ReadAllBytesAsync(path)));
    }

    private static (int Width, int Height) Size(ReadOnlySpan<byte> png) =>
        (BinaryPrimitives.ReadInt32BigEndian(png[16..]), BinaryPrimitives.ReadInt32BigEndian(png[20..]));
}
