using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;

namespace Browser.Tests.Bench;

/// <summary>The page, published once and served from a folder as any static host does, compressed where it is and the browser takes it.</summary>
public sealed class BenchSite : IDisposable
{
    private static readonly Dictionary<string, string> Types = new()
    {
        [".html"] = "text/html",
        [".js"] = "text/javascript",
        [".css"] = "text/css",
        [".wasm"] = "application/wasm",
        [".json"] = "application/json",
        [".png"] = "image/png",
        [".svg"] = "image/svg+xml",
        [".webmanifest"] = "application/manifest+json",
    };

    /// <summary>Whether it is compressed, as for visitors; it takes half a minute, and most tests look at other things.</summary>
    public static readonly bool IsCompressed =
        Amount.IsLong || Environment.GetEnvironmentVariable("AIRCOLUMN_TIMES") == "write";

    private readonly string folder = Directory.CreateTempSubdirectory("bench-page").FullName;
    private readonly HttpListener listener = new();
    private readonly ConcurrentBag<string> missing = [];
    private long sent;

    public BenchSite()
    {
        Publish();
        Address = Listen();
        _ = Task.Run(Serve);
    }

    /// <summary>Where the page is.</summary>
    public string Address { get; }

    /// <summary>How much has been sent, bytes, as compressed as it was.</summary>
    public long Sent => Interlocked.Read(ref sent);

    /// <summary>What was asked for and is not there.</summary>
    public IReadOnlyCollection<string> Missing => missing;

    public void Dispose()
    {
        listener.Close();
        Directory.Delete(folder, true);
    }

    private void Publish()
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [
                "publish",
                Path.Combine(Sheet.Top, "samples", "BenchPage"),
                "--no-restore",
                "-p:BuildProjectReferences=false",
                // As the test command built it, so that it is not compiled again.
                "-p:RunAnalyzers=false",
                "-c",
                Programs.Configuration,
                $"-p:CompressionEnabled={(IsCompressed ? "true" : "false")}",
                "-p:_BlazorBrotliCompressionLevel=SmallestSize",
                "-o",
                folder,
            ]
        )
        {
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, said);
    }

    // A port that is free; another program may take it first, so a few are tried.
    private string Listen()
    {
        for (var attempt = 0; ; attempt++)
        {
            var address = $"http://localhost:{Random.Shared.Next(20_000, 60_000)}/bench/";
            try
            {
                listener.Prefixes.Clear();
                listener.Prefixes.Add(address);
                listener.Start();
                return address;
            }
            catch (HttpListenerException) when (attempt < 20) { }
        }
    }

    private async Task Serve()
    {
        while (listener.IsListening)
        {
            try
            {
                var context = await listener.GetContextAsync();
                _ = Task.Run(() => Answer(context));
            }
            catch (Exception problem) when (problem is HttpListenerException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task Answer(HttpListenerContext context)
    {
        var path = context.Request.Url!.AbsolutePath["/bench/".Length..];
        var file = Path.Combine(folder, "wwwroot", path.Length == 0 ? "index.html" : path);
        using var response = context.Response;
        if (!File.Exists(file))
        {
            missing.Add(path);
            response.StatusCode = 404;
            return;
        }

        var isSmall =
            (context.Request.Headers["Accept-Encoding"] ?? "").Contains("br", StringComparison.Ordinal)
            && File.Exists($"{file}.br");
        response.ContentType = Types.GetValueOrDefault(Path.GetExtension(file), "application/octet-stream");
        response.Headers["Cache-Control"] = "no-cache";
        if (isSmall)
        {
            response.Headers["Content-Encoding"] = "br";
        }

        var bytes = await File.ReadAllBytesAsync(isSmall ? $"{file}.br" : file);
        Interlocked.Add(ref sent, bytes.Length);
        response.ContentLength64 = bytes.Length;
        await response.OutputStream.WriteAsync(bytes);
    }
}
