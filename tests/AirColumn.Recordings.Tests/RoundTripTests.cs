using AirColumn.Recordings.Previews;
using UnitsNet;

namespace AirColumn.Recordings.Tests;

/// <summary>From a column to its rendered drone, through a WAV file, to the note and the resonance that it is on.</summary>
public class RoundTripTests
{
    public static TheoryData<string, int> Notes =>
        new()
        {
            { "straight", 1 },
            { "straight", 2 },
            { "stepped", 1 },
            { "stepped", 2 },
            { "conical", 1 },
        };

    [Theory]
    [MemberData(nameof(Notes))]
    public void What_is_rendered_is_heard_again(string tube, int register)
    {
        var column = Column(tube);
        var preview = DronePreview.Of(column, new PreviewOptions { Register = register });
        Assert.Equal(PreviewStatus.Speaks, preview.Status);
        using var file = new MemoryStream();
        WaveFile.Write16(file, preview.Samples.Span, Frequency.FromHertz(preview.SampleRate));
        using var recording = Recording.Open(file);

        var drone = Take.Of(recording).Drone!;
        // The frequency of the lips in the computation itself; the attack and the release are in the recording too.
        Assert.Equal(0, Cents.Between(preview.PlayingFrequency!.Value, drone.Fundamental), 1.0);
        var steady = drone.Pitch.Where(p => p.Time >= preview.SteadyFrom && p.Time <= preview.SteadyTo);
        Assert.Equal(
            0,
            Cents.Between(
                preview.PlayingFrequency.Value,
                Frequency.FromHertz(steady.Average(p => p.Frequency.Hertz))
            ),
            0.05
        );
        var resonances = column.FirstResonances(4);
        var nearest = resonances.MinBy(r => Math.Abs(Cents.Between(r.Frequency, drone.Fundamental)))!;
        Assert.Equal(resonances[register - 1].Frequency.Hertz, nearest.Frequency.Hertz, 1e-6);
    }

    private static Column Column(string tube) =>
        tube switch
        {
            "straight" => RingingTube.Straight,
            "stepped" => RingingTube.Stepped,
            _ => new Column(
                Bore.Build()
                    .Cone(
                        Length.FromMillimeters(30),
                        Length.FromMillimeters(70),
                        Length.FromMillimeters(1300)
                    )
                    .OpenEnd(Length.FromMillimeters(3)),
                Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
            ),
        };
}
