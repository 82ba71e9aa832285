using System.CommandLine;
using System.Globalization;

namespace Shared;

/// <summary>How far a run of several things is, for the line that somebody who waits sees.</summary>
internal sealed class Progress(ParseResult parsed, int total) : IProgress<double>
{
    private readonly Watch? watch = total > 1 ? TimeLimitOption.Of(parsed)?.Running : null;
    private int done;

    /// <summary>So much of it all is done, 0 to 1.</summary>
    public void Report(double value)
    {
        while (done < Math.Min(total, (int)(value * total)))
        {
            Next();
        }
    }

    /// <summary>One more is done.</summary>
    public void Next()
    {
        done++;
        watch?.Did(string.Create(CultureInfo.InvariantCulture, $"{done} of {total}"));
    }
}
