using AirColumn.Acoustics.Losses;

namespace AirColumn.Acoustics.Line;

/// <summary>A gas between walls: its constants and what the wall takes from a wave in it.</summary>
internal sealed class Medium(GasConstants gas, WallLosses losses)
{
    /// <summary>The constants.</summary>
    public GasConstants Gas { get; } = gas;

    /// <summary>The model of the losses.</summary>
    public WallLosses Losses { get; } = losses;

    /// <summary>The losses.</summary>
    public BoundaryLayer Wall { get; } = new(gas, losses);

    /// <summary>c, m/s.</summary>
    public double SpeedOfSound => Gas.SpeedOfSound;

    /// <summary>ρc, Pa·s/m.</summary>
    public double Impedance => Gas.Density * Gas.SpeedOfSound;
}
