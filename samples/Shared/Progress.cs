using System.CommandLine;
using System.Globalization;

namespace Shared;

/// <summary>How far a long run is, on the error stream of somebody who watches it; nothing where that is a file.</summary>
internal sealed class Progress(ParseResult parsed, int total) : IProgress<double>
{
    private readonly bool isWatched = !Console.IsErrorRedirected && total > 1;
    private int done;

    /// <summary>So much of it all is done, 0 to 1.</summary>
    public void Report(double value)
    {
        while (done < Math.Min(total, (int)(value * total)))
        {
            Next();
        }
    }

    /// <summary>One more is done; after the last the line is wiped.</summary>
    public void Next()
    {
        done++;
        if (!isWatched)
        {
            return;
        }

        var text = string.Create(CultureInfo.InvariantCulture, $"{done} of {total}");
        parsed.InvocationConfiguration.Error.Write(
            done < total ? $"\r{text}" : $"\r{new string(' ', text.Length)}\r"
        );
        parsed.InvocationConfiguration.Error.Flush();
    }
}
