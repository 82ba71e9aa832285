namespace AirColumn;

/// <summary>The open tone holes, in order from the blown end. Immutable, equal by value.</summary>
public sealed record Fingering
{
    private readonly EquatableArray<bool>? open; // null: all alike
    private readonly bool rest;

    private Fingering(EquatableArray<bool>? open, bool rest)
    {
        this.open = open;
        this.rest = rest;
    }

    /// <summary>Every hole open, however many there are.</summary>
    public static Fingering AllOpen { get; } = new(null, true);

    /// <summary>Every hole closed, however many there are.</summary>
    public static Fingering AllClosed { get; } = new(null, false);

    /// <summary>The number of holes of the fingering; null if it fits any number.</summary>
    public int? Count => open?.Count;

    /// <summary>A fingering hole by hole.</summary>
    /// <param name="open">For each hole, from the blown end: true if it is open.</param>
    /// <returns>The fingering.</returns>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public static Fingering Of(params IReadOnlyList<bool> open)
    {
        ArgumentNullException.ThrowIfNull(open);
        return new(new EquatableArray<bool>(open), false);
    }

    /// <summary>Reads a fingering in the notation of fingering charts, from the blown end: "xxx ooo".</summary>
    /// <param name="text">
    /// x or ● for a closed hole, o or ○ for an open one; spaces and | between the hands are skipped. Or "all open" or "all closed".
    /// </param>
    /// <returns>The fingering.</returns>
    /// <exception cref="ArgumentNullException">The text is null.</exception>
    /// <exception cref="FormatException">The text holds another character.</exception>
    public static Fingering Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (var alike in (Fingering[])[AllOpen, AllClosed])
        {
            if (text == alike.ToString())
            {
                return alike;
            }
        }

        var open = new List<bool>();
        foreach (var sign in text)
        {
            switch (sign)
            {
                case 'x' or 'X' or '●':
                    open.Add(false);
                    break;
                case 'o' or 'O' or '○':
                    open.Add(true);
                    break;
                case ' ' or '|':
                    break;
                default:
                    throw new FormatException(
                        $"The fingering \"{text}\" holds '{sign}'; write x for a closed hole and o for an open one, as in \"xxx ooo\"."
                    );
            }
        }

        return Of(open);
    }

    /// <summary>
    /// The fingering in the notation of fingering charts: x closed, o open; "all open" or "all closed" if it fits any number of holes.
    /// </summary>
    /// <returns>The fingering, as text.</returns>
    public override string ToString() =>
        open is not null ? string.Concat(open.Select(hole => hole ? 'o' : 'x'))
        : rest ? "all open"
        : "all closed";

    /// <summary>True for each open one of so many holes.</summary>
    internal bool[] ForHoles(int count, string parameter) =>
        open is null ? [.. Enumerable.Repeat(rest, count)]
        : open.Count == count ? [.. open]
        : throw new ArgumentException(
            $"The fingering {this} is for {open.Count} holes; this bore has {count}. Mark each hole x (closed) or o (open).",
            parameter
        );
}
