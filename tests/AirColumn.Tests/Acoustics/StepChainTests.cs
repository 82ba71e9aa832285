using System.Numerics;
using AirColumn.Acoustics.Junctions;
using FsCheck.Xunit;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>Steps that hear each other. How many cents that makes, against radial modes, is in <see cref="WavefrontChoiceTests"/>.</summary>
public class StepChainTests
{
    private const double Density = 1.2;
    private const double Speed = 343;

    // A groove of no length is none: what both steps have by themselves is gone, but for what modes finer than those carried have of it.
    [Theory]
    [InlineData(0.02, 0.03)]
    [InlineData(0.02, 0.023)]
    [InlineData(0.02, 0.021)]
    public void A_groove_that_vanishes_has_no_mass(double pipe, double groove)
    {
        var before = double.PositiveInfinity;
        foreach (var length in new[] { 3e-3, 1e-3, 3e-4, 1e-4 })
        {
            var mass = Total([pipe, groove, pipe], [length]);
            Assert.InRange(mass, 0, 0.75 * before);
            before = mass;
        }

        Assert.InRange(before, 0, 0.05 * 2 * Alone(pipe, groove));
    }

    // Two small steps up with a short pipe between are one larger step in the end.
    [Fact]
    public void Two_steps_that_meet_are_one()
    {
        var total = Total([0.02, 0.025, 0.03], [1e-5]);
        Near.Relative(Alone(0.02, 0.03), total, 0.01);
    }

    [Fact]
    public void Steps_far_apart_do_not_hear_each_other()
    {
        const double radius = 0.03;
        foreach (var added in StepChain.Of([0.02, radius, 0.02], [StepChain.Reach * radius], Density, Speed))
        {
            Near.Absolute(0, added.At(0) / Alone(0.02, radius), 2e-4);
        }
    }

    [Property(MaxTest = 60)]
    public void What_is_turned_round_or_made_larger_is_the_same(uint seed)
    {
        var random = new Random((int)(seed % int.MaxValue));
        var steps = random.Next(2, 6);
        double[] radii = [.. Enumerable.Range(0, steps + 1).Select(_ => 0.01 + 0.02 * random.NextDouble())];
        double[] lengths =
        [
            .. Enumerable.Range(0, steps - 1).Select(_ => 0.001 + 0.03 * random.NextDouble()),
        ];
        var chain = StepChain.Of(radii, lengths, Density, Speed);
        var turned = StepChain.Of([.. radii.Reverse()], [.. lengths.Reverse()], Density, Speed);
        var larger = StepChain.Of(
            [.. radii.Select(radius => 3 * radius)],
            [.. lengths.Select(length => 3 * length)],
            Density,
            Speed
        );
        var omega = random.NextDouble() * chain[0].HeldFrom;
        for (var i = 0; i < steps; i++)
        {
            var added = chain[i].At(omega);
            var scale = 1e-9 * Alone(radii[i], radii[i + 1]);
            Near.Absolute(added, turned[steps - 1 - i].At(omega), scale, seed);
            Near.Absolute(added, 3 * larger[i].At(omega / 3), scale, seed);
        }
    }

    [Fact]
    public void Lanes_give_what_one_frequency_gives()
    {
        var chain = StepChain.Of([0.02, 0.03, 0.025], [0.004], Density, Speed)[0];
        double[] omega = [.. Enumerable.Range(0, Vector<double>.Count).Select(i => 500.0 + 9000 * i)];
        var lanes = chain.At(Vector.Create<double>(omega));
        for (var i = 0; i < omega.Length; i++)
        {
            Near.Relative(chain.At(omega[i]), lanes[i], 1e-13);
        }
    }

    // A column made from another has the clusters of that; one made anew has its own.
    [Fact]
    public void A_changed_column_is_what_one_made_anew_is()
    {
        var bore = Couplings(14);
        var changed = new Column(Couplings(20), TableAir).WithBore(bore.WithSectionLength(0, Mm(700)));
        var anew = new Column(bore.WithSectionLength(0, Mm(700)), TableAir);
        var frequency = UnitsNet.Frequency.FromHertz(371);
        Assert.Equal(anew.ImpedanceAt(frequency), changed.ImpedanceAt(frequency));

        static Bore Couplings(double between) =>
            Bore.Build()
                .Cylinder(Mm(41), Mm(600))
                .Cylinder(Mm(48), Mm(1))
                .Cylinder(Mm(41), Mm(between))
                .Cylinder(Mm(60), Mm(1))
                .Cylinder(Mm(52), Mm(200))
                .OpenEnd(Mm(2));
    }

    private static double Alone(double a, double b) => new StepInertance(a, b, Density, Speed).At(0);

    private static double Total(double[] radii, double[] lengths) =>
        StepChain
            .Of(radii, lengths, Density, Speed)
            .Select((added, i) => added.At(0) + Alone(radii[i], radii[i + 1]))
            .Sum();
}
