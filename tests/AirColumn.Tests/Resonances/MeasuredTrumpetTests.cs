using UnitsNet;

namespace AirColumn.Tests.Resonances;

/// <summary>A real instrument against the measured bore of another of its class.</summary>
public class MeasuredTrumpetTests
{
    // The bores differ, and the tuning slide is free: modes to a third of a semitone, quality factors to a fifth, intervals between neighbours,
    // which a slide hardly moves, to 25 cents.
    [Fact]
    public void The_modes_of_a_trumpet_are_those_of_its_class()
    {
        var found = MeasuredTrumpet.Column().FirstResonances(11);
        var measured = MeasuredTrumpet.Peaks();
        Assert.Equal(measured.Count, found.Count);
        var last = double.NaN;
        for (var n = 1; n < measured.Count; n++)
        {
            var cents = Cents.Between(Frequency.FromHertz(measured[n]["frequency_hz"]), found[n].Frequency);
            Assert.InRange(cents, -33, 33);
            Assert.InRange(found[n].QualityFactor / measured[n]["q"], 0.8, 1.2);
            Assert.False(Math.Abs(cents - last) > 25, $"mode {n + 1}: {cents} after {last}");
            last = cents;
        }
    }
}
