namespace AirColumn.Recordings.Tracking;

/// <summary>Finds where a recording holds a note, and if nowhere, why.</summary>
internal sealed class SteadyStretches
{
    // Below it one period is not like the next: 0.5 is as much noise as tone.
    private const double LeastClarity = 0.5;

    // A frame so far below the loudest is no playing any more, dB.
    private const double Quiet = -35;

    // Full scale over silence: what the steps of 16 bits amount to, dB.
    private const double Silent = -85;

    // From one moment to the next a pitch that is held moves less, another note is farther, cents.
    private const double SameNote = 60;

    // Frames so far off were taken for another octave, cents.
    private const double OtherOctave = 600;

    // Frames that a new one is compared with: a pitch that glides is followed and looked at as a whole.
    private const int Recent = 6;

    // Frames that may fall out of a note before it counts as ended.
    private const int Gap = 4;

    // Frames of a note that are there at least when it is measured.
    private const int LeastFrames = 4;

    private readonly IReadOnlyList<PitchFrame> frames;
    private readonly double leastSeconds;
    private readonly double frameSeconds;
    private readonly double loudest;

    private double longest;
    private double glide;
    private bool travels;

    /// <summary>Looks for notes of so many seconds in frames of so many.</summary>
    public SteadyStretches(IReadOnlyList<PitchFrame> frames, double leastSeconds, double frameSeconds)
    {
        (this.frames, this.leastSeconds, this.frameSeconds) = (frames, leastSeconds, frameSeconds);
        loudest = frames.Max(frame => frame.Level);
    }

    public IReadOnlyList<SteadyStretch> Find()
    {
        var found = new List<SteadyStretch>();
        var from = 0;
        while (from < frames.Count)
        {
            if (!Sounds(from))
            {
                from++;
                continue;
            }

            var to = End(from);
            longest = Math.Max(longest, Seconds(to - from));
            // A frame that reaches into what comes before or after is of two notes.
            found.AddRange(Held(from + 1, to - 1));
            from = Math.Max(to, from + 1);
        }

        return [.. found.OrderBy(part => part.From)];
    }

    /// <summary>Why nothing was found.</summary>
    public string Reason()
    {
        if (Decibels(loudest) < Silent)
        {
            return loudest == 0
                ? "it is silent"
                : FormattableString.Invariant(
                    $"it is silent: its loudest part is {Decibels(loudest):0} dB of full scale"
                );
        }

        var periodic = frames.Count(frame => frame.Clarity >= LeastClarity && frame.Level > 0);
        if (periodic == 0)
        {
            return FormattableString.Invariant(
                $"it is noise, too far away, or outside the range of pitches looked for: one period is hardly ever like the next (at best to {100 * frames.Max(f => f.Clarity):0} %; {100 * LeastClarity:0} % is needed)"
            );
        }

        if (glide != 0)
        {
            return FormattableString.Invariant(
                $"the pitch glides by {Math.Abs(glide):0} cents a second. Play one note and hold it"
            );
        }

        if (travels)
        {
            return FormattableString.Invariant(
                $"the pitch glides; it stays nowhere within {HeldPart.Range:0} cents for {leastSeconds:0.##} s. Play one note and hold it"
            );
        }

        return longest + FrameTrack.Hop >= leastSeconds
            ? "the sound that is held is not one note: two sound at once, or the noise is as strong"
            : FormattableString.Invariant(
                $"no note is held within {SameNote:0} cents for {leastSeconds:0.##} s: the longest lasts {longest:0.0#} s. It is too short, or the pitch glides, jumps or breaks off"
            );
    }

    // Parts of neighbouring frames where the pitch neither travels nor is left, the longest first.
    private IEnumerable<SteadyStretch> Held(int from, int to)
    {
        if (Sounding(from, to) == 0)
        {
            yield break;
        }

        var pitch = Pitch(from, to);
        var cents = new double[to - from];
        for (var i = 0; i < cents.Length; i++)
        {
            var off = Sounds(from + i) ? Cents(pitch, frames[from + i].Hertz) : double.NaN;
            cents[i] = Math.Abs(off) < OtherOctave ? off : double.NaN;
        }

        var smoothed = HeldPart.Smoothed(cents);
        var (isGliding, isHeld) = (false, false);
        var left = new Stack<(int From, int To)>([(0, smoothed.Length)]);
        while (left.TryPop(out var part))
        {
            var (first, last) = HeldPart.Longest(smoothed.AsSpan(part.From, part.To - part.From));
            (first, last) = (first + part.From, last + part.From);
            // What silence or another note ends reaches as far as its frames; what glides on does not.
            var whole = last - first == smoothed.Length;
            var seconds = whole ? Seconds(to - from + 2) + FrameTrack.Hop : (last - first) * FrameTrack.Hop;
            if (Sounding(from + first, from + last) < LeastFrames || seconds < leastSeconds)
            {
                continue;
            }

            if (HeldPart.Glide(smoothed.AsSpan(first, last - first), FrameTrack.Hop, isGliding) is { } slope)
            {
                isGliding = true;
                glide = Math.Abs(slope) > Math.Abs(glide) ? slope : glide;
            }
            else
            {
                isHeld = true;
                var (inner, outer) = HeldPart.AtHome(smoothed, first, last);
                yield return new SteadyStretch(from + inner, from + outer, Pitch(from + inner, from + outer));
            }

            left.Push((part.From, first));
            left.Push((last, part.To));
        }

        travels |= !isHeld && Seconds(to - from + 2) + FrameTrack.Hop >= leastSeconds;
    }

    private int Sounding(int from, int to)
    {
        var count = 0;
        for (var i = from; i < to; i++)
        {
            count += Sounds(i) ? 1 : 0;
        }

        return count;
    }

    // What so many frames on end show, the first and the last of them whole.
    private double Seconds(int count) => (count - 1) * FrameTrack.Hop + frameSeconds;

    private static double Decibels(double level) => 20 * Math.Log10(level);

    private bool Sounds(int i) =>
        frames[i].Clarity >= LeastClarity
        && frames[i].Hertz > 0
        && Decibels(frames[i].Level) >= Math.Max(Silent, Decibels(loudest) + Quiet);

    // Behind the last frame of the note that begins here.
    private int End(int from)
    {
        var recent = new List<double> { frames[from].Hertz };
        var end = from + 1;
        for (var i = from + 1; i < frames.Count && i - end <= Gap; i++)
        {
            if (Sounds(i) && Math.Abs(Cents(Median(recent), frames[i].Hertz)) <= SameNote)
            {
                recent.Add(frames[i].Hertz);
                if (recent.Count > Recent)
                {
                    recent.RemoveAt(0);
                }

                end = i + 1;
            }
        }

        return end;
    }

    private double Pitch(int from, int to) =>
        Median([.. Enumerable.Range(from, to - from).Where(Sounds).Select(i => frames[i].Hertz)]);

    private static double Cents(double from, double to) => 1200 * Math.Log2(to / from);

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
