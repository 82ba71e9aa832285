using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>
/// Rows of many open holes: in the stop band of the row the state grows by orders from hole to hole, and what lies before it is a small
/// part of that. The list is held against a scan of |Z|, each frequency by itself.
/// </summary>
public class RowsOfHolesTests
{
    [Theory]
    [InlineData(12, 16, 10, 16)]
    [InlineData(12, 24, 10, 16)]
    [InlineData(15, 24, 8, 16)]
    [InlineData(20, 80, 4, 9.5)]
    public void None_is_missed_or_made_up(double bore, int holes, double diameter, double apart)
    {
        var builder = Bore.Build().Cylinder(Mm(bore), Mm(300 + apart * holes + 20));
        for (var i = 0; i < holes; i++)
        {
            builder = builder.Hole(Mm(300 + apart * i), Mm(diameter), Mm(3));
        }

        var column = new Column(builder.OpenEnd(Mm(1)), TableAir);
        const double Top = 2000;
        const double Step = 0.5;
        var seen = Maxima(column, Top, Step).Select(maximum => maximum.Hertz).ToList();
        var found = column.Resonances(Frequency.FromHertz(Top));
        Assert.Equal(seen.Count, found.Count);
        Assert.All(seen.Zip(found), pair => Near.Absolute(pair.First, pair.Second.Frequency.Hertz, Step));
    }

    // Holes of all sizes in rows of 10 to 60, some of them closed, each of which hears all others. Maxima lower than 0.01 dB are not asked for.
    [Fact]
    public void Random_rows()
    {
        const double Top = 3000;
        const double Step = 0.25;
        const double Shallowest = 0.01; // dB
        for (var seed = 0; seed < Amount.Of(2, 500); seed++)
        {
            var column = RandomRow(seed);
            var top = Math.Min(Top, 0.999 * column.HighestFrequency.Hertz);
            var found = column
                .Resonances(Frequency.FromHertz(top))
                .Select(resonance => resonance.Frequency.Hertz)
                .ToList();
            var maxima = Maxima(column, top, Step);
            var missed = maxima
                .Where(maximum =>
                    maximum.Decibels > Shallowest
                    && found.TrueForAll(hertz => Math.Abs(hertz - maximum.Hertz) > 2 * Step)
                )
                .ToList();
            Assert.True(missed.Count == 0, $"seed {seed}: missed {string.Join(" ", missed)}");
            foreach (var hertz in found.Where(hertz => hertz > 3 * Step && hertz < top - 3 * Step))
            {
                Assert.True(
                    maxima.Any(maximum => Math.Abs(hertz - maximum.Hertz) <= 2 * Step) || IsHigher(hertz),
                    $"seed {seed}: made up {hertz}"
                );
            }

            // Too shallow or too near another for the scan.
            bool IsHigher(double hertz) =>
                Size(column, hertz) >= Size(column, hertz * (1 - 1e-5))
                && Size(column, hertz) >= Size(column, hertz * (1 + 1e-5));
        }
    }

    private static Column RandomRow(int seed)
    {
        var random = new Random(seed);
        var count = random.Next(10, 61);
        var (length, diameter) = (400 + 600 * random.NextDouble(), 8 + 20 * random.NextDouble());
        var apart = 0.85 * length / count;
        var holes = Enumerable
            .Range(0, count)
            .Select(i => new ToneHole(
                Mm(0.1 * length + apart * (i + 0.3 * random.NextDouble())),
                Mm(Math.Min(0.8 * diameter, 0.6 * apart) * (0.3 + 0.6 * random.NextDouble())),
                Mm(1 + 6 * random.NextDouble())
            ))
            .ToList();
        return new Column(
            new Bore(
                [new CylinderSection(Mm(diameter), Mm(length))],
                new OpenEnd(Mm(4 * random.NextDouble())),
                holes
            ),
            TableAir,
            new ColumnOptions
            {
                Wavefronts = Wavefronts.Curved,
                Fingering = Fingering.Of([.. holes.Select(_ => random.Next(3) > 0)]),
            }
        );
    }

    private static double Size(Column column, double hertz) =>
        column.ImpedanceAt(Frequency.FromHertz(hertz)).Magnitude;

    // Each with how far |Z| falls on either side of it before it rises above it, dB; the lesser counts.
    private static List<(double Hertz, double Decibels)> Maxima(Column column, double top, double step)
    {
        // Frequencies that fall are not answered from a series.
        var hertz = Enumerable
            .Range(0, (int)(top / step))
            .Select(i => top - i * step)
            .Where(f => f > 20)
            .ToArray();
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        column.Impedance(hertz, real, imaginary);
        var level = real.Zip(imaginary, (re, im) => 20 * Math.Log10(double.Hypot(re, im))).ToArray();
        var maxima = new List<(double, double)>();
        for (var i = 1; i < level.Length - 1; i++)
        {
            if (level[i] > level[i - 1] && level[i] >= level[i + 1])
            {
                maxima.Add((hertz[i], level[i] - Math.Max(Lowest(i, -1), Lowest(i, 1))));
            }
        }

        maxima.Reverse();
        return maxima;

        double Lowest(int from, int by)
        {
            var lowest = level[from];
            for (var i = from + by; i >= 0 && i < level.Length && level[i] <= level[from]; i += by)
            {
                lowest = Math.Min(lowest, level[i]);
            }

            return lowest;
        }
    }
}
