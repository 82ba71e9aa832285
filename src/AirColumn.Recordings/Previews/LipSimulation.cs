namespace AirColumn.Recordings.Previews;

/// <summary>
/// Lips on a column in the time domain: the equations of <see cref="LipModel"/> with p = ZcU + r∗(p + ZcU), r the reflection function
/// (schumacher1981, adachi1996).
/// </summary>
/// <remarks>
/// The lips take a step with the pressure at its middle (the free oscillation exact, the force second-order in the step), so that the
/// opening is known before the flow; flow and pressure then follow from a quadratic equation, without iteration.
/// </remarks>
internal sealed class LipSimulation
{
    private const int Block = 1024; // samples from one look at the token to the next

    private readonly LipConstants lips;
    private readonly double impedance;
    private readonly double density;
    private readonly double step;
    private readonly double[] taps;

    /// <param name="reflection">What the column reflects.</param>
    /// <param name="impedance">Zc = ρc/S at the blown end, Pa·s/m³.</param>
    /// <param name="density">ρ of the breath, kg/m³.</param>
    /// <param name="lips">The lips.</param>
    public LipSimulation(ReflectionFunction reflection, double impedance, double density, LipConstants lips)
    {
        this.lips = lips;
        this.impedance = impedance;
        this.density = density;
        step = 1 / reflection.SampleRate;
        taps = reflection.Taps;
    }

    /// <summary>Blows.</summary>
    /// <param name="mouth">Pressure in the mouth at every sample, Pa.</param>
    /// <param name="lipHertz">The lips' own frequency.</param>
    /// <param name="opening">How far the lips are open when they are let go, m.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public LipMotion Blow(
        ReadOnlySpan<double> mouth,
        double lipHertz,
        double opening,
        CancellationToken cancellationToken = default
    )
    {
        var motion = new LipMotion(mouth.Length);
        var returning = new ReturningWave(taps);
        var first = taps[0];
        var omega = 2 * Math.PI * lipHertz;
        var decay = omega / (2 * lips.Quality);
        var free = Math.Sqrt(omega * omega - decay * decay);
        var c1 = 2 * Math.Exp(-decay * step) * Math.Cos(free * step);
        var c2 = -Math.Exp(-2 * decay * step);
        var push = (1 - c1 - c2) / (omega * omega * lips.MassPerArea); // a steady pressure opens by Δ/(μω²)
        var direct = impedance * (1 + first) / (1 - first);

        var (opened, before, drop) = (opening - lips.Opening, opening - lips.Opening, mouth[0]); // h − h₀ now and a step ago; pₘ − p
        for (var i = 0; i < mouth.Length; i++)
        {
            if (i % Block == 0)
            {
                cancellationToken.ThrowIfCancellationRequested();
            }

            (opened, before) = (c1 * opened + c2 * before + push * drop, opened);
            opening = lips.Opening + opened;
            var returned = returning.At(motion.Outgoing, i) / (1 - first);
            var flow = Flow(lips.Width * Math.Max(opening, 0), mouth[i] - returned, direct);
            var pressure = direct * flow + returned;
            drop = mouth[i] - pressure;
            motion.Opening[i] = opening;
            motion.Pressure[i] = pressure;
            motion.Outgoing[i] = pressure + impedance * flow;
        }

        return motion;
    }

    // U = S·√(2|Δ|/ρ)·sign Δ with Δ = drop − direct·U, written so that nothing cancels.
    private double Flow(double area, double drop, double direct)
    {
        if (area <= 0 || drop == 0)
        {
            return 0;
        }

        var g = 2 * area * area / density;
        var b = g * direct;
        return 2 * g * drop / (b + Math.Sqrt(b * b + 4 * g * Math.Abs(drop)));
    }
}
