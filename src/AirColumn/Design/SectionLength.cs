using System.Globalization;
using AirColumn.Acoustics;
using AirColumn.Pitches;
using AirColumn.Resonances;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace AirColumn.Design;

/// <summary>How long one section must be for the column's first resonance to lie on a frequency.</summary>
public static class SectionLength
{
    private const double ShortestMetres = 1e-5;
    private const double LongestMetres = 100;
    private const double ShortestPart = 1e-6;

    // Far below what anybody hears or cuts; above the rounding of the resonance search.
    private const double SolvedWithinCents = 1e-6;

    private const double StepForSlope = 0.5e-3;

    /// <summary>Stretches or shortens one section, its diameters kept, until the first resonance meets the target.</summary>
    /// <param name="column">The column to begin with; it is not changed.</param>
    /// <param name="sectionIndex">Which section: 0 is at the blown end.</param>
    /// <param name="target">
    /// Where the first resonance is wanted: above 0, up to <see cref="Column.HighestFrequency"/>.
    /// </param>
    /// <returns>
    /// The solution with status and residual: solved means within 1e-6 cent. Lengths from 0.01 mm to 100 m are tried.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section, or the target is out of range.</exception>
    /// <exception cref="ArgumentException">
    /// A hole or branch, which keeps its distance from the blown end, does not fit a length that was tried.
    /// </exception>
    public static LengthSolution Solve(Column column, int sectionIndex, Frequency target)
    {
        ArgumentNullException.ThrowIfNull(column);
        var sections = column.Bore.Sections.Count;
        if (sectionIndex < 0 || sectionIndex >= sections)
        {
            throw new ArgumentOutOfRangeException(
                nameof(sectionIndex),
                sectionIndex,
                $"sectionIndex is {sectionIndex}; this bore has {sections} sections, so allowed is 0 to {sections - 1}."
            );
        }

        Require.Positive(target.Hertz, "Hz", nameof(target));
        Require.InRange(target.Hertz, 0, column.HighestFrequency.Hertz, "Hz", nameof(target));
        return new Search(column, sectionIndex, target).Run();
    }

    private sealed class Search(Column start, int index, Frequency target)
    {
        private readonly Dictionary<double, double> tried = [];

        // No part of a profile may become shorter than a section can be, and the bore must go on reaching beyond its last hole
        // or branch, which stay where they are.
        private double Shortest
        {
            get
            {
                var bore = start.Bore;
                var section = bore.Sections[index];
                var part = section.SmoothParts.Min(part => part.LengthMetres);
                return Math.Max(
                    Math.Max(ShortestMetres, ShortestPart * section.LengthMetres / part),
                    section.LengthMetres - (bore.LengthMetres - bore.LastOpeningMetres)
                );
            }
        }

        public LengthSolution Run()
        {
            var length = Math.Clamp(start.Bore.Sections[index].LengthMetres, Shortest, LongestMetres);
            // Longer is flatter, and too short shows no resonance below the cut-on: walk outwards in octaves of length
            // until the target lies between.
            var (sharp, flat) = (length, length);
            while (IsSharp(flat) && flat < LongestMetres)
            {
                (sharp, flat) = (flat, Math.Min(flat * 2, LongestMetres));
            }

            while (!IsSharp(sharp) && CentsAt(sharp) < 0 && sharp > Shortest)
            {
                (flat, sharp) = (sharp, Math.Max(sharp / 2, Shortest));
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

            if (sharpCents < 0)
            {
                return End(SolveStatus.OutOfReach, sharp);
            }

            if (flatCents > 0)
            {
                return End(SolveStatus.OutOfReach, flat);
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

        private Column ColumnAt(double metres) =>
            new(
                start.Bore.WithSectionLength(index, Length.FromMeters(metres)),
                start.AirProfile,
                start.Options
            );

        private bool IsSharp(double metres) => !(CentsAt(metres) <= 0);

        // The first resonance against the target; NaN where there is none.
        private double CentsAt(double metres)
        {
            if (!tried.TryGetValue(metres, out var cents))
            {
                var lowest = ColumnAt(metres).LowestResonance();
                cents = lowest is null ? double.NaN : Cents.Between(target, lowest.Frequency);
                tried[metres] = cents;
            }

            return cents;
        }

        private LengthSolution End(SolveStatus status, double metres)
        {
            var column = ColumnAt(metres);
            var cents = tried[metres];
            var evaluations = tried.Count;
            return new LengthSolution
            {
                Status = status,
                Length = Length.FromMillimeters(metres * 1000),
                Column = column,
                Frequency = double.IsNaN(cents) ? Frequency.Zero : target * Cents.ToRatio(cents),
                ResidualCents = cents,
                CentsPerMillimetre = status == SolveStatus.Solved ? Slope(metres) : double.NaN,
                Evaluations = evaluations,
                Explanation = Explain(status, metres, cents),
            };
        }

        // Central difference; a smaller one next to a length that shows no resonance.
        private double Slope(double metres)
        {
            // To both sides as far as there is room on both; at the very shortest, forwards.
            var step = Math.Min(StepForSlope, Math.Min(metres / 10, metres - Shortest));
            for (var i = 0; i < 4 && step > 1e-9; i++, step /= 10)
            {
                var change = CentsAt(metres + step) - CentsAt(metres - step);
                if (!double.IsNaN(change))
                {
                    return change / (2 * step * 1000);
                }
            }

            return (CentsAt(metres + StepForSlope) - CentsAt(metres)) / (StepForSlope * 1000);
        }

        private string Explain(SolveStatus status, double metres, double cents)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"section {index + 1}");
            var length =
                metres < 10
                    ? string.Create(CultureInfo.InvariantCulture, $"{metres * 1000:0.##} mm")
                    : string.Create(CultureInfo.InvariantCulture, $"{metres:0.##} m");
            var off = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(cents):0} cents");
            var wanted = string.Create(CultureInfo.InvariantCulture, $"{target.Hertz:0.##} Hz");
            return status switch
            {
                SolveStatus.Solved => $"With {name} {length} long the first resonance lies on {wanted}.",
                SolveStatus.OutOfReach when cents < 0 =>
                    $"Even with {name} {length} long the first resonance lies {off} below {wanted}; shorten another section.",
                SolveStatus.OutOfReach =>
                    $"Even with {name} {length} long the first resonance lies {off} above {wanted}; lengthen another section.",
                SolveStatus.NoResonance =>
                    $"With {name} {length} long the column shows no first resonance below the cut-on, so {wanted} cannot be aimed at.",
                _ => $"The search ended {off} from {wanted} with {name} {length} long.",
            };
        }
    }
}
