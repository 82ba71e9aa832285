using System.Globalization;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace AirColumn;

/// <summary>One search for a length: outwards until the target is enclosed, then Brent's method.</summary>
internal sealed class LengthSearch
{
    private const double ShortestPart = 1e-6;

    // Far below what anybody hears or cuts; above the rounding of the resonance search.
    private const double SolvedWithinCents = 1e-6;

    private readonly Column start;
    private readonly CancellationToken cancellationToken;
    private readonly LengthQuestion question;
    private readonly Frequency target;
    private readonly double present; // m, of the sections together
    private readonly double shortest;
    private readonly double longest;
    private readonly Dictionary<double, double> tried = [];

    public LengthSearch(Column start, LengthQuestion question, CancellationToken cancellationToken)
    {
        this.cancellationToken = cancellationToken;
        (this.start, this.question, target) = (start, question, question.Target);
        present = question.Sections.Sum(i => start.Bore.Sections[i].LengthMetres);
        longest = question.Longest.Meters;
        shortest = Math.Min(Shortest(), longest);
    }

    public LengthSolution Run()
    {
        var length = Math.Clamp(present, shortest, longest);
        // Longer is flatter, and too short shows no resonance below the cut-on: walk outwards in octaves of length
        // until the target lies between.
        var (sharp, flat) = (length, length);
        while (IsSharp(flat) && flat < longest)
        {
            (sharp, flat) = (flat, Math.Min(flat * 2, longest));
        }

        while (!IsSharp(sharp) && CentsAt(sharp) < 0 && sharp > shortest)
        {
            (flat, sharp) = (sharp, Math.Max(sharp / 2, shortest));
        }

        // Where the sharp side shows none, close in on the shortest length that does.
        for (var i = 0; i < 60 && double.IsNaN(CentsAt(sharp)) && CentsAt(flat) < 0; i++)
        {
            var middle = (sharp + flat) / 2;
            (sharp, flat) = IsSharp(middle) ? (middle, flat) : (sharp, middle);
        }

        var (sharpCents, flatCents) = (CentsAt(sharp), CentsAt(flat));
        if (double.IsNaN(sharpCents) || double.IsNaN(flatCents))
        {
            return End(SolveStatus.NoResonance, double.IsNaN(sharpCents) ? sharp : flat);
        }

        if (sharpCents < -SolvedWithinCents)
        {
            return End(SolveStatus.OutOfReach, sharp);
        }

        if (flatCents > SolvedWithinCents)
        {
            return End(SolveStatus.OutOfReach, flat);
        }

        // An end of what is allowed may be the answer.
        if (sharpCents <= 0 || flatCents >= 0)
        {
            return End(SolveStatus.Solved, sharpCents <= 0 ? sharp : flat);
        }

        // Converged or not, the best length tried is judged by its own residual; where a length between shows no
        // resonance its value only keeps the iteration going.
        _ = Brent.TryFindRoot(
            x => double.IsNaN(CentsAt(x)) ? sharpCents : CentsAt(x),
            sharp,
            flat,
            1e-13,
            100,
            out _
        );
        var best = tried.Where(pair => !double.IsNaN(pair.Value)).MinBy(pair => Math.Abs(pair.Value)).Key;
        return End(
            Math.Abs(tried[best]) <= SolvedWithinCents ? SolveStatus.Solved : SolveStatus.NotConverged,
            best
        );
    }

    // No part of a profile may become shorter than a section can be, and the bore must go on reaching beyond the last hole
    // or branch that stays where it is.
    private double Shortest()
    {
        var least = Math.Max(
            question.Shortest.Meters,
            present - start.Bore.SpareMetres(question.HolesFromFarEnd)
        );
        foreach (var i in question.Sections)
        {
            least = Math.Max(
                least,
                ShortestPart * present / start.Bore.Sections[i].SmoothParts.Min(part => part.LengthMetres)
            );
        }

        return least;
    }

    private Column ColumnAt(double metres)
    {
        var bore = start.Bore;
        foreach (var i in question.Sections)
        {
            // As long as asked for, exactly, where it is one.
            var share = question.Sections.Count == 1 ? 1 : start.Bore.Sections[i].LengthMetres / present;
            bore = bore.WithSectionLength(i, Length.FromMeters(share * metres), question.HolesFromFarEnd);
        }

        return start.WithBore(bore);
    }

    private bool IsSharp(double metres) => !(CentsAt(metres) <= 0);

    // The resonance against the target; NaN where there is none.
    private double CentsAt(double metres)
    {
        if (!tried.TryGetValue(metres, out var cents))
        {
            cents = ResonanceOf(ColumnAt(metres)) is { } found
                ? Cents.Between(target, found.Frequency)
                : double.NaN;
            tried[metres] = cents;
        }

        return cents;
    }

    private Resonance? ResonanceOf(Column column)
    {
        if (question.Resonance == 1)
        {
            return column.LowestResonance(cancellationToken);
        }

        var resonances = column.FirstResonances(question.Resonance, cancellationToken);
        return resonances.Count < question.Resonance ? null : resonances[question.Resonance - 1];
    }

    private LengthSolution End(SolveStatus status, double metres)
    {
        var column = ColumnAt(metres);
        var cents = tried[metres];
        return new LengthSolution
        {
            Question = question,
            Status = status,
            Length = Length.FromMillimeters(metres * 1000),
            Bracket = Bracket(metres),
            Column = column,
            Frequency = double.IsNaN(cents) ? Frequency.Zero : target * Cents.ToRatio(cents),
            ResidualCents = cents,
            CentsPerMillimetre = status == SolveStatus.Solved ? Slope(column) : double.NaN,
            Evaluations = tried.Count,
            Explanation = Explain(status, metres, cents),
        };
    }

    private LengthBracket? Bracket(double metres)
    {
        var shorter = tried
            .Where(pair => pair.Value >= 0 && pair.Key <= metres)
            .Select(pair => pair.Key)
            .DefaultIfEmpty()
            .Max();
        var longer = tried
            .Where(pair => pair.Value <= 0 && pair.Key >= metres)
            .Select(pair => pair.Key)
            .DefaultIfEmpty()
            .Min();
        return shorter > 0 && longer > 0
            ? new LengthBracket(Length.FromMillimeters(shorter * 1000), Length.FromMillimeters(longer * 1000))
            : null;
    }

    private double Slope(Column column)
    {
        if (ResonanceOf(column) is not { } resonance)
        {
            return double.NaN;
        }

        var gradient = column.Gradients(
            [resonance],
            [
                .. question.Sections.Select(section =>
                    ColumnParameter.SectionLength(section, column.Bore.Holes.Count, question.HolesFromFarEnd)
                ),
            ],
            cancellationToken: cancellationToken
        )[0];
        var total = question.Sections.Sum(i => column.Bore.Sections[i].LengthMetres);
        return 1e-3
            * question
                .Sections.Select(
                    (i, n) => column.Bore.Sections[i].LengthMetres / total * gradient.CentsPerUnit(n)
                )
                .Sum();
    }

    private string Explain(SolveStatus status, double metres, double cents)
    {
        var numbers = string.Join(
            " and ",
            question.Sections.Select(i => (i + 1).ToString(CultureInfo.InvariantCulture))
        );
        var name = question.Sections.Count == 1 ? $"section {numbers}" : $"sections {numbers} together";
        var another = question.Sections.Count == 1 ? "another section" : "other sections";
        var which = Wording.Ordinal(question.Resonance);
        var length =
            metres < 10
                ? string.Create(CultureInfo.InvariantCulture, $"{metres * 1000:0.##} mm")
                : string.Create(CultureInfo.InvariantCulture, $"{metres:0.##} m");
        var off = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(cents):0} cents");
        var wanted = string.Create(CultureInfo.InvariantCulture, $"{target.Hertz:0.##} Hz");
        return status switch
        {
            SolveStatus.Solved => $"With {name} {length} long the {which} resonance lies on {wanted}.",
            SolveStatus.OutOfReach when cents < 0 =>
                $"Even with {name} {length} long the {which} resonance lies {off} below {wanted}; shorten {another}.",
            SolveStatus.OutOfReach =>
                $"Even with {name} {length} long the {which} resonance lies {off} above {wanted}; lengthen {another}.",
            SolveStatus.NoResonance =>
                $"With {name} {length} long the column shows no {which} resonance below the cut-on, so {wanted} cannot be aimed at.",
            _ => $"The search ended {off} from {wanted} with {name} {length} long.",
        };
    }
}
