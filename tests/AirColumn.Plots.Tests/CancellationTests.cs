using UnitsNet;

namespace AirColumn.Plots.Tests;

/// <summary>Pictures end when they are cancelled, and can be had afterwards.</summary>
public class CancellationTests
{
    private static readonly Column Tube = new(
        new Bore(
            [new CylinderSection(Length.FromMillimeters(40), Length.FromMillimeters(1200))],
            new OpenEnd(Length.FromMillimeters(2))
        ),
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
    );

    [Fact]
    public void A_picture_ends_when_it_is_cancelled_and_can_be_had_afterwards()
    {
        var picture = ImpedancePicture.Of(Tube);
        var path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid()}.png");
        var curve = Tube.Impedance(FrequencyGrid.Linear(20, 500, 100));
        Action<CancellationToken>[] calls =
        [
            token => ImpedancePicture.Of(Tube, null, token),
            token => StandingWavePicture.Of(Tube, Frequency.FromHertz(100), token),
            token => picture.Png(token),
            token => picture.Svg(token),
            token => picture.Save(path, token),
            token => RichView.Of(Tube, token),
            token => RichView.Of(Tube.Bore, token),
            token => RichView.Of(picture, token),
            token => RichView.Of(curve, token),
        ];
        using var source = new CancellationTokenSource();
        source.Cancel();
        foreach (var call in calls)
        {
            Assert.ThrowsAny<OperationCanceledException>(() => call(source.Token));
        }

        Assert.False(File.Exists(path));
        foreach (var call in calls)
        {
            call(CancellationToken.None);
        }

        Assert.Equal(picture.Png(), File.ReadAllBytes(path));
        File.Delete(path);
    }
}
