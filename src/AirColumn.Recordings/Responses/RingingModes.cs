using UnitsNet;

namespace AirColumn.Recordings.Responses;

/// <summary>Resonances from pieces of decaying sound: what is found again in most of them.</summary>
internal static class RingingModes
{
    /// <summary>The longest piece that is used, s: later the sound is noise.</summary>
    public const double Longest = 0.5;

    /// <summary>The shortest, s: three periods of a low drone.</summary>
    public const double Shortest = 0.06;

    // Each piece is looked at from several beginnings: what depends on where it begins is no mode of the tube.
    private static readonly double[] Delays = [0, 0.004, 0.009, 0.015];

    // Of the looks, or of the parts, that must show a mode.
    private const double Most = 0.6;

    private const double LeastQ = 2;

    // The walls of the widest tubes that are played, 100 mm, leave at most half of it at 1 kHz (fletcher1998, ch. 8): what rings on longer is a
    // tone that something else holds.
    private const double MostQ = 1000;
    private const double Faintest = 3e-4; // of the strongest amplitude

    /// <summary>Whether a piece of sound is a decay: its last quarter has less than half of the power of its first.</summary>
    public static bool DiesAway(ReadOnlySpan<double> piece)
    {
        var quarter = piece.Length / 4;
        var first = piece[..quarter];
        var last = piece[^quarter..];
        return DotProduct.Of(last, last) < 0.5 * DotProduct.Of(first, first);
    }

    /// <summary>The modes that most pieces show.</summary>
    public static IReadOnlyList<RecordedResonance> Of(
        IReadOnlyList<double[]> pieces,
        double rate,
        double lowest,
        double highest,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    ) => Told(Groups(pieces, rate, lowest, highest, progress, cancellationToken));

    /// <summary>
    /// The modes that a decay shows and most of the parts that it is the mean of show too, each with more noise: their scatter is the
    /// uncertainty.
    /// </summary>
    public static IReadOnlyList<RecordedResonance> Of(
        double[] whole,
        IReadOnlyList<double[]> parts,
        double rate,
        double lowest,
        double highest,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    )
    {
        var looks = new List<DampedSine[]>();
        var all = parts.Count + Delays.Length;
        foreach (var part in parts)
        {
            looks.Add(Look(part, rate, lowest, highest, cancellationToken));
            progress?.Report((double)looks.Count / all);
        }

        var groups = Groups(
            [whole],
            rate,
            lowest,
            highest,
            Part.Of(progress, (double)parts.Count / all, (double)Delays.Length / all),
            cancellationToken
        );
        var confirmed = new List<(List<DampedSine> Group, double Scatter)>();
        foreach (var (group, _) in groups)
        {
            var hertz = Median(group, mode => mode.Hertz);
            List<DampedSine> again =
            [
                .. looks
                    .SelectMany(look => look.OrderBy(mode => Math.Abs(mode.Hertz - hertz)).Take(1))
                    .Where(mode => Math.Abs(mode.Hertz - hertz) < 1.5 * Width(group)),
            ];
            if (again.Count >= Most * parts.Count)
            {
                confirmed.Add((group, Scatter(again, hertz) / Math.Sqrt(again.Count)));
            }
        }

        return Told(confirmed);
    }

    private static List<(List<DampedSine> Group, double Scatter)> Groups(
        IReadOnlyList<double[]> pieces,
        double rate,
        double lowest,
        double highest,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    )
    {
        var looks = new List<DampedSine[]>();
        for (var i = 0; i < pieces.Count; i++)
        {
            foreach (var start in Delays.Select(delay => (int)(delay * rate)))
            {
                if (pieces[i].Length - start >= Shortest * rate)
                {
                    looks.Add(Look(pieces[i][start..], rate, lowest, highest, cancellationToken));
                }
            }

            progress?.Report((i + 1.0) / pieces.Count);
        }

        var groups = new List<List<DampedSine>>();
        foreach (var mode in looks.SelectMany(look => look).OrderBy(mode => mode.Hertz))
        {
            // One mode's frequencies lie well within its width.
            if (groups.Count > 0 && mode.Hertz - Median(groups[^1], m => m.Hertz) < Width(groups[^1]))
            {
                groups[^1].Add(mode);
            }
            else
            {
                groups.Add([mode]);
            }
        }

        return
        [
            .. groups
                .Where(group => group.Count >= Math.Max(2, Most * looks.Count))
                .Select(group => (group, Scatter(group, Median(group, mode => mode.Hertz)))),
        ];
    }

    private static List<RecordedResonance> Told(List<(List<DampedSine> Group, double Scatter)> modes)
    {
        var strongest = modes.Count == 0 ? 1 : modes.Max(mode => Median(mode.Group, m => m.Amplitude));
        return
        [
            .. modes.Select(mode =>
            {
                var hertz = Median(mode.Group, m => m.Hertz);
                return new RecordedResonance(
                    Frequency.FromHertz(hertz),
                    1200 / Math.Log(2) * mode.Scatter / hertz,
                    Median(mode.Group, m => m.Q),
                    20 * Math.Log10(Median(mode.Group, m => m.Amplitude) / strongest)
                );
            }),
        ];
    }

    // Robust against a look that went astray: 1.4826 of the median distance.
    private static double Scatter(List<DampedSine> group, double hertz) =>
        1.4826 * Median(group, mode => Math.Abs(mode.Hertz - hertz));

    private static DampedSine[] Look(
        double[] piece,
        double rate,
        double lowest,
        double highest,
        CancellationToken cancellationToken
    )
    {
        var modes = DampedSines.In(piece, rate, cancellationToken);
        var strongest = modes.Count == 0 ? 0 : modes.Max(mode => mode.Amplitude);
        return
        [
            .. modes.Where(mode =>
                mode.Hertz >= lowest
                && mode.Hertz <= highest
                && mode.Q is >= LeastQ and <= MostQ
                && mode.Amplitude >= Faintest * strongest
            ),
        ];
    }

    private static double Width(List<DampedSine> group) =>
        Math.Max(1, Median(group, mode => mode.Hertz) / Median(group, mode => mode.Q) / 2);

    private static double Median(List<DampedSine> group, Func<DampedSine, double> of)
    {
        var values = group.Select(of).Order().ToArray();
        return (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
    }
}
