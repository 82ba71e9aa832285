using AirColumn.Recordings.Previews;
using UnitsNet;

namespace AirColumn.Recordings.Tests.Previews;

public class PreviewOptionsTests
{
    public static TheoryData<Func<object>, string> OutOfRange =>
        new()
        {
            {
                () =>
                    new PreviewOptions { Register = 0 },
                "Register is 0; allowed is 1 to 10."
            },
            {
                () =>
                    new PreviewOptions { Register = 11 },
                "Register is 11"
            },
            {
                () =>
                    new PreviewOptions { Duration = Duration.FromSeconds(0.5) },
                "Duration is 0.5 s"
            },
            {
                () =>
                    new PreviewOptions { SampleRate = 8000 },
                "SampleRate is 8000 Hz"
            },
            {
                () =>
                    new PreviewOptions { BlowingPressure = Pressure.FromKilopascals(26) },
                "BlowingPressure is 26000 Pa"
            },
            {
                () =>
                    new PreviewOptions { LipFrequency = Frequency.FromHertz(1) },
                "LipFrequency is 1 Hz"
            },
            {
                () =>
                    new PreviewOptions { FullScale = Pressure.Zero },
                "FullScale is 0 Pa"
            },
            {
                () =>
                    new LipModel { OpeningAtRest = Length.FromMillimeters(-1) },
                "OpeningAtRest is -1 mm"
            },
            {
                () =>
                    new LipModel { Width = Length.FromMillimeters(100) },
                "Width is 100 mm"
            },
            {
                () =>
                    new LipModel { QualityFactor = double.NaN },
                "QualityFactor is NaN"
            },
            {
                () =>
                    new LipModel { MassPerArea = AreaDensity.Zero },
                "MassPerArea is 0 kg/m²"
            },
        };

    [Theory]
    [MemberData(nameof(OutOfRange))]
    public void Values_out_of_range_are_named(Func<object> make, string message) =>
        Assert.Contains(
            message,
            Assert.Throws<ArgumentOutOfRangeException>(make).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Lips_cannot_be_null() =>
        Assert.Throws<ArgumentNullException>(() => new PreviewOptions { Lips = null! });

    // cullen2000 and velut2017, from memory: h₀ = 0.5 mm, w = 12 mm, Q = 7, 1/μ = 0.11 m²/kg.
    [Fact]
    public void The_default_lips_are_the_published_ones()
    {
        var lips = new LipModel().Constants;

        Assert.Equal(0.5e-3, lips.Opening, 9);
        Assert.Equal(12e-3, lips.Width, 9);
        Assert.Equal(7, lips.Quality);
        Assert.Equal(0.11, 1 / lips.MassPerArea, 9);
    }
}
