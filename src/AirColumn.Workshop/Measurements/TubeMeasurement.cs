using UnitsNet;

namespace AirColumn.Workshop.Measurements;

/// <summary>A heard drone, with the tube and the air. Immutable.</summary>
public sealed record TubeMeasurement
{
    private readonly JointState joints;
    private readonly Length? stopsShort;

    /// <summary>Keeps a measurement.</summary>
    /// <param name="when">The time of the measurement.</param>
    /// <param name="cut">The length of the open pipe, sockets included; above 0.</param>
    /// <param name="heard">The drone; above 0.</param>
    /// <param name="standardUncertaintyCents">Standard uncertainty of the drone, cents: 0 to 1200.</param>
    /// <param name="air">The air in the room: a state, not mere constants.</param>
    /// <param name="recording">The identifier of the recording, such as a checksum; empty if there is none.</param>
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
            throw new ArgumentException(
                "The air was given by constants only, but its temperature is needed.",
                nameof(air)
            );
        }

        (When, Cut, Heard, StandardUncertaintyCents) = (when, cut, heard, standardUncertaintyCents);
        (Air, Recording) = (air, recording);
    }

    /// <summary>The time of the measurement.</summary>
    public DateTimeOffset When { get; }

    /// <summary>The length of the open pipe, sockets included.</summary>
    public Length Cut { get; }

    /// <summary>The drone.</summary>
    public Frequency Heard { get; }

    /// <summary>Standard uncertainty of the drone, cents.</summary>
    public double StandardUncertaintyCents { get; }

    /// <summary>The air in the room.</summary>
    public Air Air { get; }

    /// <summary>
    /// The state of the joints. Default: dry, since tubes are trimmed dry and the error is then on the long side. The state makes no
    /// difference if no socket is tapered.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The state is not defined.</exception>
    public JointState Joints
    {
        get => joints;
        init => joints = Require.Named(value, nameof(Joints));
    }

    /// <summary>
    /// The measured distance by which all pipes together stopped short of the bottom of their sockets: 0 to 1 m; null to compute it.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public Length? StopsShort
    {
        get => stopsShort;
        init
        {
            if (value is { } given)
            {
                Require.InRange(given.Millimeters, 0, 1000, "mm", nameof(StopsShort));
            }

            stopsShort = value;
        }
    }

    /// <summary>The identifier of the recording; empty if there is none.</summary>
    public string Recording { get; }
}
