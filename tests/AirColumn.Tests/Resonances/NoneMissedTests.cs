using System.Numerics;
using AirColumn.Tests.Acoustics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>The resonances found are the local maxima of |Z| that a dense scan sees, no more and no fewer.</summary>
public class NoneMissedTests
{
    // Hz: the sharpest peak of these bores is some tenths of a hertz wide.
    private const double Step = 0.25;

    public static TheoryData<string> ReferenceBores => [.. Bores.Keys];

    private static Dictionary<string, Bore> Bores =>
        new()
        {
            ["field-cylinder"] = Bore.Build().Cylinder(Mm(40.9), Mm(1300)).OpenEnd(Mm(3.7)),
            ["field-cylinder-baffle"] = Bore.Build().Cylinder(Mm(40.9), Mm(1300)).BaffledEnd(),
            ["field-cone"] = Bore.Build().Cone(Mm(30), Mm(90), Mm(1400)).OpenEnd(Mm(5)),
            ["cone_a"] = Bore.Build().Cone(Mm(4), Mm(20), Mm(300)).OpenEnd(),
            ["cone_b"] = Bore.Build().Cone(Mm(30), Mm(90), Mm(1400)).OpenEnd(),
            ["cone_c"] = Bore.Build().Cone(Mm(90), Mm(30), Mm(1400)).OpenEnd(),
            ["cone_d"] = Bore.Build().Cone(Mm(1), Mm(10), Mm(500)).OpenEnd(),
            ["unequal chambers"] = Bore.Build()
                .Cylinder(Mm(3.551), Mm(361.071))
                .Cylinder(Mm(60.37), Mm(1.2536))
                .Cylinder(Mm(31.29), Mm(18.801))
                .Cylinder(Mm(20.617), Mm(61.908))
                .Cylinder(Mm(76.481), Mm(77.47))
                .IdealOpenEnd(),
            ["chambers joined by a neck"] = Bore.Build()
                .Cylinder(Mm(40), Mm(300))
                .Cylinder(Mm(3), Mm(50))
                .Cylinder(Mm(40), Mm(300))
                .ClosedEnd(),
            ["chambers joined by a capillary"] = Bore.Build()
                .Cylinder(Mm(40), Mm(300))
                .Cylinder(Mm(0.1), Mm(500))
                .Cylinder(Mm(40), Mm(300))
                .ClosedEnd(),
            ["cylinder 1 mm"] = Bore.Build().Cylinder(Mm(2), Mm(300)).OpenEnd(),
            ["cylinder 4 mm"] = Bore.Build().Cylinder(Mm(8), Mm(3000)).OpenEnd(),
            ["cylinder 20 mm"] = Bore.Build().Cylinder(Mm(40), Mm(3000)).ClosedEnd(),
            ["cylinder 40 mm"] = Bore.Build().Cylinder(Mm(80), Mm(1300)).IdealOpenEnd(),
        };

    [Theory]
    [MemberData(nameof(ReferenceBores))]
    public void Reference_bores(string name) =>
        FoundIsWhatAScanSees(new Column(Bores[name], TableAir), 2000, name);

    // One has a branch so narrow that no series reaches from the first mode to the next few; the other's maximum lies on the corner where the
    // mass of a step is held.
    [Theory]
    [InlineData(3517, 600, 5)]
    [InlineData(6423, 8300, 1)]
    public void Where_a_series_ends_nothing_is_lost(int seed, double top, int last)
    {
        var random = new Random(seed);
        var bore = RandomBore.From(seed, 2e-3, 0.05, 1);
        var fingering = Fingering.AllOpen;
        if (random.Next(2) == 0)
        {
            (bore, fingering) = RandomOpenings.From(seed, bore);
        }

        var options = new ColumnOptions
        {
            Losses = random.Next(8) == 0 ? WallLosses.LargeTube : WallLosses.Full,
            Fingering = fingering,
            BlownEnd = random.Next(3) == 0 ? BlownEnd.Open(Mm(5)) : BlownEnd.Closed,
        };
        var column = new Column(bore, TableAir, options with { Wavefronts = Wavefronts.Curved });
        var found = column.Resonances(Frequency.FromHertz(top));
        var sign = options.BlownEnd.IsOpen ? -1 : 1;
        Assert.True(found.Count >= last);
        foreach (var hertz in found.TakeLast(last).Select(each => each.Frequency.Hertz))
        {
            Assert.True(At(hertz) >= At(hertz * 0.999) && At(hertz) >= At(hertz * 1.001));
        }

        Assert.Equal(seed == 3517 ? 555.49 : 8132.41, found[^1].Frequency.Hertz, 0.02);

        double At(double hertz) => sign * column.AnswerAt(2 * Math.PI * hertz).Magnitude;
    }

    // Every bore that can be built gets an answer in time, be it that there is no resonance.
    [Theory]
    [InlineData(0.01, 1e4)]
    [InlineData(0.1, 1000)]
    [InlineData(1, 10_000)]
    [InlineData(30, 1e6)]
    [InlineData(10_000, 0.001)]
    public void Extreme_tubes_are_answered(double diameter, double length) => AreAnswered(diameter, length);

    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public void A_kilometre_of_needle_is_answered() => AreAnswered(0.01, 1e6);

    private static void AreAnswered(double diameter, double length)
    {
        foreach (
            var end in new BoreEnd[]
            {
                new OpenEnd(Mm(0)),
                new OpenEnd(Mm(3)),
                new ClosedEnd(),
                new IdealOpenEnd(),
            }
        )
        {
            var found = Column(new CylinderSection(Mm(diameter), Mm(length)), end).FirstResonances(3);
            Assert.All(found, resonance => Assert.True(double.IsFinite(resonance.QualityFactor)));
            Assert.True(found.Count == 3 || found.Warnings.Count > 0);
        }
    }

    // The complex resonances of a lossy tube are poles of the textbook's impedance, continued off the real axis.
    [Theory]
    [InlineData(0.0015)]
    [InlineData(0.02)]
    public void Poles_are_those_of_the_textbook_version(double radius)
    {
        var plain = new PlainColumn(343.37, 1.2045, 1.814e-5, 0.0258, 1006, 1.4019);
        var column = Column(new CylinderSection(Metres(2 * radius), Metres(0.5)), new ClosedEnd());
        var found = column.FirstResonances(5);
        Assert.Equal(5, found.Count);
        foreach (var resonance in found)
        {
            // Near a pole |Z| is the residue over the distance: at 1e-6 half-widths it stands a million times the peak.
            var z = plain.ClosedImpedance(resonance.Pole, [(radius, 0.5)]);
            Assert.True(
                Complex.Abs(z) > 1e6 * resonance.Magnitude,
                $"{resonance}: {Complex.Abs(z) / resonance.Magnitude}"
            );
        }
    }

    // Both sides of nine in ten are computed to a digit less than usual, which is of no matter to a scan, and sooner.
    [Fact]
    [Trait("Speed", "Slow")]
    public void Random_bores() =>
        Parallel.For(
            0,
            Amount.Of(300, 10_000),
            seed =>
                FoundIsWhatAScanSees(
                    new Column(
                        RandomBore.From(seed, 4e-3, 0.04, 1),
                        TableAir,
                        seed % 10 == 0 ? OneDimensional : OneDimensional with { RelativeTolerance = 1e-9 }
                    ),
                    1200,
                    $"seed {seed}"
                )
        );

    private static void FoundIsWhatAScanSees(Column column, double top, string name)
    {
        top = Math.Min(top, column.HighestHertz);
        var seen = Scan(column, top);
        // One less than a step from the end has no neighbour in the scan; one that the scan rounds away from there is kept. One that the scan is too
        // coarse for, such as a maximum beside its minimum, is looked at by itself.
        var found = column
            .Resonances(Frequency.FromHertz(top))
            .Select(r => r.Frequency.Hertz)
            .Where((f, i) => f < top - 2 * Step || i < seen.Count)
            .Where(f => seen.Exists(place => Math.Abs(f - place) <= Step) || !IsHighest(f))
            .ToList();
        Assert.True(
            found.Count == seen.Count
                && found.Zip(seen).All(pair => Math.Abs(pair.First - pair.Second) <= Step),
            $"{name}: found {string.Join(" ", found.Select(f => $"{f:F1}"))}; a scan sees {string.Join(" ", seen.Select(f => $"{f:F1}"))}"
        );

        bool IsHighest(double f) => Size(f) > Size(f * (1 - 1e-5)) && Size(f) > Size(f * (1 + 1e-5));

        double Size(double f) => column.AnswerAt(2 * Math.PI * f).Magnitude;
    }

    private static List<double> Scan(Column column, double top)
    {
        var peaks = new List<double>();
        var hertz = Enumerable.Range(1, (int)(top / Step) - 1).Select(i => i * Step).ToArray();
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        column.Impedance(hertz, real, imaginary);
        var (before, last) = (0.0, 0.0);
        for (var i = 0; i < hertz.Length; i++)
        {
            var now = Complex.Abs(new Complex(real[i], imaginary[i]));
            if (last > before && last >= now && i > 1)
            {
                peaks.Add(hertz[i] - Step);
            }

            (before, last) = (last, now);
        }

        return peaks;
    }
}
