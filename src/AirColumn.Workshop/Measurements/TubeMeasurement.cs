using AirColumn.Gases;
using UnitsNet;

namespace AirColumn.Workshop.Measurements;

/// <summary>A drone that was heard, and of which tube. Immutable.</summary>
public sealed record TubeMeasurement
{
    /// <summary>Keeps what was heard.</summary>
    /// <param name="when">When it was measured.</param>
    /// <param name="cut">How long the open pipe was, sockets included; above 0.</param>
    /// <param name="heard">The drone; above 0.</param>
    /// <param name="standardUncertaintyCents">Of the drone, cents: 0 to 1200.</param>
    /// <param name="air">The air in the room: a state, not mere constants.</param>
    /// <param name="recording">What names the recording, such as a checksum; empty if there is none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="ArgumentException">The air has no state.</exception>
    public TubeMeasurement(
        DateTimeOffset when,
        Length cut,
        Frequency heard,
        double standardUncertaintyCents,
        Air air,
        string recording = ""
    )
    {
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(recording);
        Require.Positive(cut.Millimeters, "mm", nameof(cut));
        Require.Positive(heard.Hertz, "Hz", nameof(heard));
        Require.InRange(standardUncertaintyCents, 0, 1200, "cents");
        if (air.State is null)
        {
            throw new ArgumentException("The air is constants only; its temperature is needed.", nameof(air));
        }

        (When, Cut, Heard, StandardUncertaintyCents) = (when, cut, heard, standardUncertaintyCents);
        (Air, Recording) = (air, recording);
    }

    /// <summary>When it was measured.</summary>
    public DateTimeOffset When { get; }

    /// <summary>How long the open pipe was, sockets included.</summary>
    public Length Cut { get; }

    /// <summary>The drone.</summary>
    public Frequency Heard { get; }

    /// <summary>Standard uncertainty of the drone, cents.</summary>
    public double StandardUncertaintyCents { get; }

    /// <summary>The air in the room.</summary>
    public Air Air { get; }

    /// <summary>What names the recording; empty if there is none.</summary>
    public string Recording { get; }
}
