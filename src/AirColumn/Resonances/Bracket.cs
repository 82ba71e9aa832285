namespace AirColumn.Resonances;

/// <summary>
/// Two frequencies, Hz, between which the reactive phase reaches an angle, and what it is there; narrowed until the angle is near enough for
/// Newton's method on the lossy column to start from: in angle, however steep the phase is, and in frequency, however flat.
/// </summary>
internal struct Bracket
{
    private const double NearEnough = 0.02; // radians
    private const double NearEnoughPlace = 2e-4; // of the spacing of modes, or of the frequency

    private readonly double angle;
    private double low;
    private double below;
    private double high;
    private double above;
    private (double Hertz, double Angle) outside = (0, double.NegativeInfinity); // the end given up last
    private double offBefore = double.PositiveInfinity;
    private bool halve;
    private bool isThere;

    public Bracket(double angle, (double Hertz, double Angle) low, (double Hertz, double Angle) high)
    {
        this.angle = angle;
        (this.low, below) = low;
        (this.high, above) = high;
        halve = double.IsInfinity(below);
    }

    /// <summary>
    /// Takes the phase at a frequency between the two, and puts the next one to try in its place; true once the frequency is near enough,
    /// from when on it stays.
    /// </summary>
    public bool Narrow(ref double middle, double at, double modeSpacing)
    {
        if (isThere)
        {
            return true;
        }

        var width = high - low;
        if (at < angle)
        {
            (outside, low, below) = ((low, below), middle, at);
        }
        else
        {
            (outside, high, above) = ((high, above), middle, at);
        }

        // By halves where neither the ends have come near to each other nor the phase to the angle, and where both ends have one angle; else
        // frequency as a parabola in the angle.
        var off = Math.Abs(at - angle);
        halve = double.IsInfinity(below) || (!halve && high - low > 0.5 * width && off > 0.25 * offBefore);
        offBefore = off;
        var next = halve ? double.NaN : Between();
        next = double.IsFinite(next) ? next : (low + high) / 2;
        var moved = Math.Abs(next - middle);
        isThere =
            (off < NearEnough && moved < NearEnoughPlace * Math.Min(modeSpacing, middle))
            || high - low < 1e-9 * high;
        middle = isThere ? next : Math.Clamp(next, low + 0.01 * (high - low), high - 0.01 * (high - low));
        return isThere;
    }

    private readonly double Between()
    {
        var straight = low + (high - low) * (angle - below) / (above - below);
        var bend =
            (outside.Hertz - low - (high - low) * (outside.Angle - below) / (above - below))
            / ((outside.Angle - below) * (outside.Angle - above));
        var curved = straight + bend * (angle - below) * (angle - above);
        return curved > low && curved < high ? curved : straight;
    }
}
