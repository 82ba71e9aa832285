namespace AirColumn.Recordings.Tones;

/// <summary>
/// The lines of a sound on the multiples of the lowest fundamental that it may have, and which multiple of that is the note: by the share of the
/// amplitudes that lies on the multiples of each.
/// </summary>
/// <param name="Amplitudes">Of each line from the first; 0 where none is heard.</param>
internal sealed record Comb(IReadOnlyList<double> Amplitudes)
{
    private const int Highest = 6;

    // What lies beside the multiples of a number makes its note rough and no lower; an ear hears so much.
    private const double Rough = 0.1;

    // So little, as a looped sound or uneven lips have, raises no doubt.
    private const double Unheard = 0.045;

    // One line is often so strong, by the mouth: of more on the multiples of a number the note may be that.
    private const double Strong = 0.65;

    // Of all amplitudes: what two notes may leave unexplained, and what each must have of its own.
    private const double Unexplained = 0.04;
    private const double OfEach = 0.04;

    // Lines that two notes leave out and one note would have: fewer may be missing by chance.
    private const int LeastAbsent = 3;

    // A player's note lies so near to a resonance of the tube, cents.
    private const double AtResonance = 130;

    // What resonances may make of a note must be this much of it.
    private const double Possible = 0.6;

    // Notes in simple ratios fall together on one comb.
    private static readonly (int One, int Other)[] Ratios = [(2, 3), (3, 4), (2, 5), (3, 5), (4, 5)];

    private double All => Amplitudes.Sum();

    /// <summary>The multiple that is the note, and others that may be.</summary>
    public (int Number, IReadOnlyList<int> Others, bool IsTwoNotes) Choose()
    {
        // Of a pure tone at a multiple all are on it; the highest that still holds all is the note.
        for (var number = Highest; number > 1; number--)
        {
            if (Share(number) >= 1 - Rough)
            {
                var other = TwoNotes() is var (one, two) ? (one == number ? two : one) : 1;
                return Share(number) > 1 - Unheard ? (number, [], false)
                    : other > 1 && other != number ? (number, [other], true)
                    : (number, [1], false);
            }
        }

        if (TwoNotes() is var (low, high))
        {
            var (louder, softer) = Share(low) >= Share(high) ? (low, high) : (high, low);
            return (louder, [softer, 1], true);
        }

        return (1, [.. Enumerable.Range(2, Highest - 1).Where(number => Share(number) >= Strong)], false);
    }

    /// <summary>The same, where the resonances of the tube are known.</summary>
    public (int Number, IReadOnlyList<int> Others, bool IsTwoNotes) Choose(
        double lowest,
        IReadOnlyList<double> resonances
    )
    {
        var (number, others, isTwoNotes) = Choose();
        bool IsNear(int multiple) =>
            resonances.Any(resonance =>
                Math.Abs(1200 * Math.Log2(multiple * lowest / resonance)) <= AtResonance
            );
        var possible = Enumerable
            .Range(1, Highest)
            .Where(one => one == number || others.Contains(one) || (one > 1 && Share(one) >= Possible))
            .Where(IsNear)
            .ToList();
        return possible switch
        {
            [] => (number, others, isTwoNotes),
            [var only] => (only, [], false),
            _ when possible.Contains(number) => (number, [.. others.Where(possible.Contains)], isTwoNotes),
            _ => (
                possible.MaxBy(Share),
                [.. possible.Where(one => one != possible.MaxBy(Share))],
                isTwoNotes
            ),
        };
    }

    // The share of what lies on the multiples of a number.
    private double Share(int number) => Of(h => h % number == 0);

    private double Of(Func<int, bool> isIn)
    {
        var sum = 0.0;
        for (var h = 1; h <= Amplitudes.Count; h++)
        {
            sum += isIn(h) ? Amplitudes[h - 1] : 0;
        }

        return All > 0 ? sum / All : 0;
    }

    private (int One, int Other)? TwoNotes()
    {
        foreach (var (one, other) in Ratios)
        {
            var absent =
                Amplitudes.Count
                - Enumerable.Range(1, Amplitudes.Count).Count(h => h % one == 0 || h % other == 0);
            if (
                absent >= LeastAbsent
                && Of(h => h % one != 0 && h % other != 0) < Unexplained
                && Of(h => h % one == 0 && h % other != 0) >= OfEach
                && Of(h => h % one != 0 && h % other == 0) >= OfEach
            )
            {
                return (one, other);
            }
        }

        return null;
    }
}
