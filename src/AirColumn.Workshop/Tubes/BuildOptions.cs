using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>The choices of a <see cref="TubeBuild"/> that are neither parts, note nor air.</summary>
public sealed record BuildOptions
{
    private readonly PlayingCorrection correction = PlayingCorrection.LipsInRoomAir;
    private readonly Length cutTolerance = Length.FromMillimeters(1);
    private readonly TemperatureDelta temperatureTolerance = TemperatureDelta.FromKelvins(3);
    private readonly Length trimStep = Length.FromMillimeters(5);

    /// <summary>The correction for the player. Default: the correction for lips in room air, an estimate from common practice.</summary>
    public PlayingCorrection Correction
    {
        get => correction;
        init => correction = value ?? throw new ArgumentNullException(nameof(Correction));
    }

    /// <summary>The tolerance of a cut: above 0, up to 100 mm; 1 mm by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public Length CutTolerance
    {
        get => cutTolerance;
        init
        {
            Require.InRange(value.Millimeters, 0.01, 100, "mm", nameof(CutTolerance));
            cutTolerance = value;
        }
    }

    /// <summary>The tolerance of the temperature of the room: above 0, up to 30 K; 3 K by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The difference is out of range.</exception>
    public TemperatureDelta TemperatureTolerance
    {
        get => temperatureTolerance;
        init
        {
            Require.InRange(value.Kelvins, 0.01, 30, "K", nameof(TemperatureTolerance));
            temperatureTolerance = value;
        }
    }

    /// <summary>The step of the trim table: 0.1 mm to 100 mm; 5 mm by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public Length TrimStep
    {
        get => trimStep;
        init
        {
            Require.InRange(value.Millimeters, 0.1, 100, "mm", nameof(TrimStep));
            trimStep = value;
        }
    }
}
