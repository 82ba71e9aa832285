using System.Globalization;
using System.Security.Cryptography;
using AirColumn;
using AirColumn.Recordings;
using AirColumn.Workshop.Measurements;
using UnitsNet;

namespace Shared.Listening;

/// <summary>What a recording holds of one tube.</summary>
internal static class TubeListener
{
    private const int Resonances = 8;

    /// <summary>How to listen to a tube: its resonances settle the octave, and a long one is listened to lower down than is usual.</summary>
    public static TakeOptions OptionsFor(Column column, CancellationToken cancellationToken = default)
    {
        var resonances = column
            .FirstResonances(Resonances, cancellationToken)
            .Select(one => one.Frequency)
            .ToList();
        var usual = new TakeOptions { Resonances = resonances };
        return resonances is [var first, ..]
            ? usual with
            {
                Lowest = Frequency.FromHertz(Math.Clamp(0.8 * first.Hertz, 25, usual.Lowest.Hertz)),
            }
            : usual;
    }

    /// <summary>The drone of the tube in a take that holds a note.</summary>
    /// <param name="take">The take.</param>
    /// <param name="column">The tube.</param>
    /// <param name="name">What the recording is called.</param>
    /// <param name="problem">Why there is none; empty if there is one.</param>
    public static SoundedNote? Drone(Take take, Column column, string name, out string problem)
    {
        problem = "";
        if (column.FirstResonances(1) is not [var first])
        {
            problem = "The tube shows no first resonance, so nothing can be compared with it.";
            return null;
        }

        if (take.Near(first.Frequency, TrimAdvice.FarthestHeard) is { } drone)
        {
            return drone;
        }

        var held = take.Drone!.Fundamental;
        problem = string.Create(
            CultureInfo.InvariantCulture,
            $"{name} holds {held.Hertz:0.##} Hz, {Math.Abs(Cents.Between(first.Frequency, held)):0} cents from the first resonance of this tube, {first.Frequency.Hertz:0.##} Hz; that is not its drone. Check the recording, the cut and the parts."
        );
        return null;
    }

    /// <summary>What of a take is to be doubted, that of the drone included: it need not be what the take holds longest.</summary>
    public static IEnumerable<string> Doubts(Take take, SoundedNote drone) =>
        take.Warnings.Except(take.Drone?.Warnings ?? []).Concat(drone.Warnings);

    /// <summary>A name for a recording: the same sound has the same, wherever it lies.</summary>
    public static string NameOf(Stream sound) =>
        $"sha256:{Convert.ToHexStringLower(SHA256.HashData(sound))[..16]}";
}
