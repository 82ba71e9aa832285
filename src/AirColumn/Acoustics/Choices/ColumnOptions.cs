namespace AirColumn;

/// <summary>The choices of a <see cref="Column"/> that are neither geometry nor air.</summary>
public sealed record ColumnOptions
{
    internal const int MostModes = 12;

    private readonly double tolerance = 1e-10;
    private readonly BlownEnd blownEnd = BlownEnd.Closed;
    private readonly WallLosses losses = WallLosses.Full;
    private readonly double lossFactor = 1;
    private readonly Fingering fingering = Fingering.AllOpen;
    private readonly RadiationModel radiation = RadiationModel.Exact;
    private readonly Wavefronts wavefronts = Wavefronts.Automatic;
    private readonly int? modes;

    /// <summary>The model of the losses at the wall; full by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not defined.</exception>
    public WallLosses Losses
    {
        get => losses;
        init => losses = Require.Named(value, nameof(Losses));
    }

    /// <summary>
    /// The factor by which friction and heat conduction at the wall are larger than at a smooth, dry, rigid wall, 0.1 to 10; 1 by default. Rough or
    /// porous walls lose more.
    /// </summary>
    /// <remarks>
    /// Viscosity and conductivity of the air at the wall are multiplied by the square of the factor. So, if the boundary layer is thin,
    /// attenuation changes in proportion to the factor, and the speed of sound changes accordingly.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range or not a number.</exception>
    public double LossFactor
    {
        get => lossFactor;
        init => lossFactor = Require.InRange(value, 0.1, 10, "", nameof(LossFactor));
    }

    /// <summary>The model of the wave fronts where the bore widens or narrows; automatic by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not defined.</exception>
    public Wavefronts Wavefronts
    {
        get => wavefronts;
        init => wavefronts = Require.Named(value, nameof(Wavefronts));
    }

    /// <summary>
    /// The number of radial modes, including the plane one, if the wave fronts are modes: 1 to 12. Null, the default, takes enough modes for
    /// an estimated error of 0.1 cent at the first dozen resonances, up to half of the cut-on frequency.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside that range.</exception>
    public int? Modes
    {
        get => modes;
        init =>
            modes = value is { } count ? (int)Require.InRange(count, 1, MostModes, "", nameof(Modes)) : null;
    }

    /// <summary>
    /// The open tone holes; all by default. A fingering hole by hole must have as many holes as the bore.
    /// </summary>
    public Fingering Fingering
    {
        get => fingering;
        init => fingering = value ?? throw new ArgumentNullException(nameof(Fingering));
    }

    /// <summary>
    /// Whether open tone holes and the open far end hear each other outside the tube; true by default. Sound from each of them then adds to the
    /// pressure at the others. This moves resonances, usually by a few cents, by tens of cents where a pair of wide holes ends the column.
    /// </summary>
    /// <remarks>
    /// The tube stands in the open, its holes on one line. Some openings neither sound nor hear: side branches, the blown end, and a far end
    /// whose impedance is given. If the far end is in a baffle, no opening hears another. Radial modes leave mutual radiation out
    /// (<see cref="AirColumn.Wavefronts.Multimodal"/>); then there is a warning. Gradients and the field inside leave it out in bores that
    /// attenuate by more than 8 Np. The time for a frequency grows as the cube of the number of open holes, from a few dozen holes on.
    /// </remarks>
    public bool MutualRadiation { get; init; } = true;

    /// <summary>The radiation of the far end; exact by default.</summary>
    public RadiationModel Radiation
    {
        get => radiation;
        init => radiation = value ?? throw new ArgumentNullException(nameof(Radiation));
    }

    /// <summary>The blown end; closed by default.</summary>
    public BlownEnd BlownEnd
    {
        get => blownEnd;
        init => blownEnd = value ?? throw new ArgumentNullException(nameof(BlownEnd));
    }

    /// <summary>
    /// Relative error allowed in the transfer matrix of a section that has no closed form (a taper with losses): 1e-13 to 1e-3; 1e-10 by
    /// default. Cylinders are exact whatever the tolerance. The error of an impedance is up to ten times the tolerance in ordinary bores, and more
    /// next to sharp resonances. Interpolating a curve adds an error of a hundredth of the tolerance, and the
    /// curve reports it (<see cref="ImpedanceCurve.InterpolationError"/>).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range or not a number.</exception>
    public double RelativeTolerance
    {
        get => tolerance;
        init => tolerance = Require.InRange(value, 1e-13, 1e-3, "", nameof(RelativeTolerance));
    }
}
