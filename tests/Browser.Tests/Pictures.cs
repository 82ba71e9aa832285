using System.Buffers.Binary;
using System.Diagnostics;
using Microsoft.Playwright;

namespace Browser.Tests;

/// <summary>Pictures that are kept in docs: written there when asked for. Pixels move with fonts and browsers; that there is one of that size is tested, what it shows is looked at by people.</summary>
internal static class Pictures
{
    private const int Largest = 250_000; // bytes

    private static bool IsAsked => Environment.GetEnvironmentVariable("AIRCOLUMN_PICTURES") == "write";

    /// <summary>Keeps a picture, and compares its size with that of the one that is kept.</summary>
    public static async Task Keep(byte[] picture, params string[] path)
    {
        Assert.InRange(picture.Length, 10_000, Largest);
        var file = In(path);
        if (IsAsked)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            await File.WriteAllBytesAsync(file, picture);
        }

        Assert.Equal(Size(picture), Size(await File.ReadAllBytesAsync(file)));
    }

    /// <summary>What the printer gets, its first pages; drawn by pdftoppm where that is asked for.</summary>
    /// <param name="page">The page to print.</param>
    /// <param name="pages">How many of its pages are kept.</param>
    /// <param name="path">The folder in docs, and what the files begin with: -1.png is added for the first page.</param>
    public static async Task KeepPaper(IPage page, int pages, params string[] path)
    {
        var pdf = Path.GetTempFileName();
        try
        {
            await page.PdfAsync(
                new()
                {
                    Path = pdf,
                    Format = "A4",
                    PreferCSSPageSize = true,
                    PrintBackground = true,
                }
            );
            Assert.InRange(new FileInfo(pdf).Length, 10_000, 1_000_000);
            if (IsAsked)
            {
                using var process = Process.Start(
                    "pdftoppm",
                    ["-r", "80", "-f", "1", "-l", $"{pages}", "-png", pdf, In(path)]
                );
                await process.WaitForExitAsync();
                Assert.Equal(0, process.ExitCode);
            }

            // A4 at 80 dots an inch, to a dot.
            var (width, height) = Size(await File.ReadAllBytesAsync($"{In(path)}-1.png"));
            Assert.InRange(width, 661, 663);
            Assert.InRange(height, 935, 937);
        }
        finally
        {
            File.Delete(pdf);
        }
    }

    private static string In(string[] path) => Path.Combine([Sheet.Top, "docs", .. path]);

    private static (int Width, int Height) Size(ReadOnlySpan<byte> png) =>
        (BinaryPrimitives.ReadInt32BigEndian(png[16..]), BinaryPrimitives.ReadInt32BigEndian(png[20..]));
}
