using UnitsNet;

namespace AirColumn.Recordings.Tests.RealSound;

/// <summary>A loop played over and over.</summary>
internal static class LoopedNote
{
    private const double Seconds = 2.5;

    public static Take Heard(double[] loop, double rate) =>
        Take.Of(
            Recording.FromSamples(
                [.. Enumerable.Range(0, (int)(Seconds * rate)).Select(i => loop[i % loop.Length])],
                Frequency.FromHertz(rate)
            )
        );

    /// <summary>Heard less exact, cents, and the standard uncertainty that is stated.</summary>
    public static (double Cents, double Stated) Error(double[] loop, double rate, double hertz)
    {
        var take = Heard(loop, rate);
        Assert.True(take.Drone is not null, take.Reason);
        return (1200 * Math.Log2(take.Drone.Fundamental.Hertz / hertz), take.Drone.StandardUncertaintyCents);
    }
}
