using System.Buffers.Binary;
using System.Diagnostics;

namespace Browser.Tests;

/// <summary>The pictures of docs/sheet: taken here, and written there when asked for.</summary>
public class PictureTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const int Largest = 200_000; // bytes

    private static readonly string Folder = Path.Combine(Sheet.Top, "docs", "sheet");

    public static TheoryData<string, string, int, int, bool> Pictures =>
        new()
        {
            { "phone.png", "workshop", 360, 1500, false },
            { "phone-dark.png", "workshop", 360, 740, true },
            { "phone-bends.png", "folded", 360, 1700, false },
            { "desk.png", "workshop", 1280, 900, false },
        };

    // Pixels move with fonts and browsers; that there is a picture of that size, and what it shows, is looked at by people.
    [BrowserTheory]
    [MemberData(nameof(Pictures))]
    public async Task Pictures_of_the_pages_show_the_sheet(
        string file,
        string sheet,
        int width,
        int height,
        bool isDark
    )
    {
        var page = await browser.Open(sheet, width, isDark);
        await page.SetViewportSizeAsync(width, height);
        if (sheet == "folded")
        {
            await page.EvaluateAsync("() => document.querySelector('figure').scrollIntoView()");
        }

        var picture = await page.ScreenshotAsync();
        Assert.InRange(picture.Length, 10_000, Largest);
        await Write(file, picture);
        Assert.Equal((width, height), Size(picture));
        Assert.Equal((width, height), Size(await File.ReadAllBytesAsync(Path.Combine(Folder, file))));
    }

    // What the printer gets, its first page; drawn by pdftoppm where that is installed.
    [BrowserFact]
    public async Task Paper_shows_the_sheet()
    {
        var page = await browser.Open("workshop", 1280);
        var pdf = Path.GetTempFileName();
        try
        {
            await page.PdfAsync(
                new()
                {
                    Path = pdf,
                    PreferCSSPageSize = true,
                    PrintBackground = true,
                }
            );
            Assert.InRange(new FileInfo(pdf).Length, 10_000, 1_000_000);
            if (IsAsked)
            {
                using var process = Process.Start(
                    "pdftoppm",
                    ["-r", "80", "-f", "1", "-l", "2", "-png", pdf, Path.Combine(Folder, "paper")]
                );
                await process.WaitForExitAsync();
                Assert.Equal(0, process.ExitCode);
            }

            // A4 at 80 dots an inch.
            Assert.Equal((662, 936), Size(await File.ReadAllBytesAsync(Path.Combine(Folder, "paper-1.png"))));
        }
        finally
        {
            File.Delete(pdf);
        }
    }

    private static bool IsAsked => Environment.GetEnvironmentVariable("AIRCOLUMN_PICTURES") == "write";

    private static Task Write(string file, byte[] picture) =>
        IsAsked ? File.WriteAllBytesAsync(Path.Combine(Folder, file), picture) : Task.CompletedTask;

    private static (int Width, int Height) Size(ReadOnlySpan<byte> png) =>
        (BinaryPrimitives.ReadInt32BigEndian(png[16..]), BinaryPrimitives.ReadInt32BigEndian(png[20..]));
}
