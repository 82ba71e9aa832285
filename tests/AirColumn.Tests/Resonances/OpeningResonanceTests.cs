using System.Numerics;
using AirColumn.Tests.Acoustics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>With holes and branches, too, what is found is what a dense scan sees.</summary>
public class OpeningResonanceTests
{
    // Hz: shallow maxima of coupled columns lie 0.2 Hz from the minimum beside them.
    private const double Step = 0.1;

    [Fact]
    [Trait("Speed", "Slow")]
    public void Random_bores_with_openings()
    {
        for (var seed = 0; seed < Amount.Of(3, 30); seed++)
        {
            var (bore, fingering) = RandomOpenings.From(seed, RandomBore.From(seed, 4e-3, 0.04, 0.6));
            FoundIsWhatAScanSees(
                new Column(bore, TableAir, OneDimensional with { Fingering = fingering }),
                900,
                $"seed {seed}: {bore}; {fingering}"
            );
        }
    }

    // A closed tube with an open hole begins with a Helmholtz mode, and a stub tuned to the tube splits its modes.
    [Fact]
    public void A_vessel_with_a_hole_and_a_tube_with_a_tuned_stub()
    {
        var vessel = Bore.Build().Cylinder(Mm(60), Mm(100)).Hole(Mm(50), Mm(8), Mm(4)).ClosedEnd();
        FoundIsWhatAScanSees(new Column(vessel, TableAir), 2000, "vessel");
        var found = new Column(vessel, TableAir).FirstResonances(1)[0].Frequency.Hertz;
        // Volume and neck: f = c/2π·√(S/(l·V)), l = 4 mm + about 0.8·4 mm outside and 0.75·4 mm inside.
        var neck = Math.PI * 16e-6 / ((4 + 0.8 * 4 + 0.75 * 4) * 1e-3);
        Near.Relative(343.37 / (2 * Math.PI) * Math.Sqrt(neck / (Math.PI * 9e-4 * 0.1)), found, 0.05);

        var tuned = Bore.Build()
            .Cylinder(Mm(20), Mm(400))
            .Branch(Mm(200), Bore.Build().Cylinder(Mm(18), Mm(195)).ClosedEnd())
            .OpenEnd();
        FoundIsWhatAScanSees(new Column(tuned, TableAir), 2000, "stub");
        FoundIsWhatAScanSees(
            new Column(tuned, TableAir, new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(8)) }),
            3000,
            "stub, open blown end"
        );
    }

    // The count itself, against the sign changes of a dense scan.
    [Fact]
    [Trait("Speed", "Slow")]
    public void Modes_without_losses_are_counted_exactly()
    {
        for (var seed = 100; seed < 112; seed++)
        {
            var plain = RandomBore.From(seed, 4e-3, 0.04, 0.6);
            var (bore, _) = RandomOpenings.From(seed, new Bore(plain.Sections, new ClosedEnd()));
            bore = new Bore(bore.Sections, bore.FarEnd, bore.Holes, bore.Branches.Where(IsReactive));
            var column = new Column(bore, TableAir, Lossless with { Fingering = Fingering.AllClosed });
            // Without losses the flow at the blown end, carried from the closed ends, is imaginary and free of poles.
            var count = 0;
            var before = column.Answers().At(1).Flow.Imaginary;
            const double Fine = 0.25;
            var top = Math.Min(1500, column.CutOnHertz);
            for (var f = 1 + Fine; f < top; f += Fine)
            {
                var now = column.Answers().At(f).Flow.Imaginary;
                count += Math.Sign(now) != Math.Sign(before) ? 1 : 0;
                before = now;
            }

            Assert.Equal(count, new ModeCount(column).Below(top));
        }

        static bool IsReactive(SideBranch branch) => branch.Bore.FarEnd is ClosedEnd;
    }

    private static void FoundIsWhatAScanSees(Column column, double top, string name)
    {
        top = Math.Min(top, column.HighestHertz);
        var found = column.Resonances(Frequency.FromHertz(top)).Select(r => r.Frequency.Hertz).ToList();
        var seen = new List<double>();
        var (before, last) = (0.0, 0.0);
        for (var f = Step; f < top; f += Step)
        {
            var z = Complex.Abs(column.AnswerAt(2 * Math.PI * f));
            var now = column.Options.BlownEnd.IsOpen ? 1 / z : z;
            if (last > before && last >= now && f > 2 * Step)
            {
                seen.Add(f - Step);
            }

            (before, last) = (last, now);
        }

        Assert.True(
            found.Count == seen.Count
                && found.Zip(seen).All(pair => Math.Abs(pair.First - pair.Second) <= Step),
            $"{name}: found {string.Join(" ", found.Select(f => $"{f:F1}"))}; a scan sees {string.Join(" ", seen.Select(f => $"{f:F1}"))}"
        );
    }
}
