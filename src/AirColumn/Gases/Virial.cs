namespace AirColumn;

/// <summary>
/// A second virial coefficient B(T), m³/mol, with T·B' and T²·B'': what forces between two molecules take from the volume
/// of a gas.
/// </summary>
internal readonly record struct Virial(double B, double First, double Second)
{
    private const double R = GasMixture.MolarGasConstant;

    public static Virial operator +(Virial a, Virial b) =>
        new(a.B + b.B, a.First + b.First, a.Second + b.Second);

    public static Virial operator *(double factor, Virial a) =>
        new(factor * a.B, factor * a.First, factor * a.Second);

    /// <summary>Dry air with dry air (hyland1983, from memory).</summary>
    public static Virial AirAir(double kelvin) =>
        InverseSeries(kelvin, [34.9568e-6, -0.668772e-2, -2.10141, 92.4746]);

    /// <summary>Dry air with water vapour (hyland1983, from memory).</summary>
    public static Virial AirWater(double kelvin) =>
        InverseSeries(kelvin, [32.366097e-6, -1.41138e-2, -1.244535, 0, -2.348789e3]);

    /// <summary>Water vapour with itself: B = RT(a − b·exp(c/T)) (hyland1983, from memory).</summary>
    public static Virial WaterWater(double kelvin)
    {
        const double a = 0.70e-8; // 1/Pa
        const double b = 0.147184e-8; // 1/Pa
        var x = 1734.29 / kelvin;
        var exponential = b * Math.Exp(x);
        return R
            * kelvin
            * new Virial(a - exponential, a - exponential + exponential * x, -exponential * x * x);
    }

    /// <summary>Two gases of near-spherical molecules by corresponding states (tsonopoulos1974).</summary>
    public static Virial Between(in CriticalPoint a, in CriticalPoint b, double kelvin)
    {
        // The usual combining rules, without an interaction parameter: for one gas they give its own point back.
        var temperature = Math.Sqrt(a.Kelvin * b.Kelvin);
        var volume = Math.Pow((Math.Cbrt(a.MolarVolume) + Math.Cbrt(b.MolarVolume)) / 2, 3);
        var compressibility = (a.Compressibility + b.Compressibility) / 2;
        var omega = (a.AcentricFactor + b.AcentricFactor) / 2;
        // R·Tc/Pc with Pc = Zc·R·Tc/Vc.
        return volume
            / compressibility
            * InverseSeries(
                kelvin / temperature,
                [
                    0.1445 + 0.0637 * omega,
                    -0.330,
                    -0.1385 + 0.331 * omega,
                    -0.0121 - 0.423 * omega,
                    0,
                    0,
                    0,
                    0,
                    -0.000607 - 0.008 * omega,
                ]
            );
    }

    // Σ cₙ·T⁻ⁿ and T times, T² times its derivatives.
    private static Virial InverseSeries(double t, ReadOnlySpan<double> coefficients)
    {
        var (sum, power) = (default(Virial), 1.0);
        for (var n = 0; n < coefficients.Length; n++)
        {
            sum += coefficients[n] * power * new Virial(1, -n, n * (n + 1));
            power /= t;
        }

        return sum;
    }
}

/// <summary>Where a gas ceases to condense: K, Pa, m³/mol, and Pitzer's acentric factor.</summary>
internal readonly record struct CriticalPoint(
    double Kelvin,
    double Pascals,
    double MolarVolume,
    double AcentricFactor
)
{
    /// <summary>Air as one gas (lemmon2000, from memory).</summary>
    public static CriticalPoint Air => new(132.6306, 3.7858e6, 92e-6, 0.0335);

    /// <summary>Carbon dioxide (span1996, from memory).</summary>
    public static CriticalPoint CarbonDioxide => new(304.13, 7.377e6, 94.07e-6, 0.225);

    /// <summary>Water (iapws1997, from memory).</summary>
    public static CriticalPoint Water => new(647.1, 22.06e6, 55.9e-6, 0.344);

    public double Compressibility => Pascals * MolarVolume / (GasMixture.MolarGasConstant * Kelvin);
}
