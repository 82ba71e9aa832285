using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Inside;

/// <summary>
/// Pressure and flow at every joint of a column at one angular frequency, from the far end, and between the joints on demand; what the
/// walls take on the way; all in terms of the source at the blown end.
/// </summary>
internal sealed class ColumnField
{
    private const double Finest = 1e-13;

    private readonly ColumnModel model;
    private readonly Band band;
    private readonly FieldState[] joints; // joints[i] is on the near side of part i; the last one at the far end
    private readonly List<WallLoss>[] losses; // of each part
    private readonly Complex source;
    private readonly double sourceLog;

    public ColumnField(ColumnModel model, double omega, CancellationToken cancellationToken)
    {
        this.model = model;
        Omega = omega;
        band = new Band(omega, omega, Math.Min(model.Options.RelativeTolerance, Finest));
        var count = model.Way.Length;
        joints = new FieldState[count + 1];
        losses = new List<WallLoss>[count];
        var (end, mouths) = Mouths();
        joints[^1] = end;
        for (var i = count - 1; i >= 0; i--)
        {
            cancellationToken.ThrowIfCancellationRequested();
            losses[i] = [];
            switch (model.Way[i])
            {
                case BoreSegment segment:
                    joints[i] = Through(segment, joints[i + 1], losses[i]);
                    break;
                case SideColumn { IsOpenHole: true } hole when mouths.TryDequeue(out var mouth):
                    (joints[i], joints[i + 1]) = Sides(hole, mouth);
                    break;
                default:
                    joints[i] = Through(model.Way[i], joints[i + 1]);
                    break;
            }
        }

        var blown = joints[0];
        sourceLog = blown.LogScale;
        source = model.Options.BlownEnd.IsOpen
            ? blown.Pressure + model.Blown.Impedance(omega) * blown.Flow
            : blown.Flow;
    }

    /// <summary>rad/s.</summary>
    public double Omega { get; }

    /// <summary>On the near side of a part; past the last one, at the far end.</summary>
    public FieldState Joint(int i) => joints[i];

    /// <summary>Inside part <paramref name="i"/>, a segment, m from its inlet.</summary>
    public FieldState Within(int i, double from)
    {
        var segment = (BoreSegment)model.Way[i];
        if (from <= 0)
        {
            return joints[i];
        }

        return from >= segment.Length
            ? joints[i + 1]
            : Through(segment.Between(from, segment.Length), joints[i + 1]);
    }

    /// <summary>
    /// Pressure and flow for a source of 1: m³/s into a closed blown end, Pa outside an open one and its correction.
    /// </summary>
    public (Complex Pressure, Complex Flow) PerSource(in FieldState state)
    {
        var scale = Complex.Exp(state.LogScale - sourceLog) / source;
        var (p, u) = (state.Pressure * scale, state.Flow * scale);
        return Complex.IsFinite(p) && Complex.IsFinite(u)
            ? (p, u)
            : throw new ArithmeticException(
                $"At {Require.Show(Omega / (2 * Math.PI), "Hz")} this column, which has no losses, resonates without bound. Ask "
                    + "for a frequency beside it, or give the column losses."
            );
    }

    /// <summary>½·Re(p·U*), the power that passes towards the far end, W for that source.</summary>
    public double Power(in FieldState state)
    {
        var (p, u) = PerSource(state);
        return 0.5 * (p.Real * u.Real + p.Imaginary * u.Imaginary);
    }

    /// <summary>What the wall of a part takes by friction and as heat, W for that source.</summary>
    public (double Friction, double Heat) WallPower(int i)
    {
        var (friction, heat) = (0.0, 0.0);
        foreach (var loss in losses[i])
        {
            var (p, _) = PerSource(new FieldState(1, 0, loss.LogScale));
            var scale = p.Real * p.Real + p.Imaginary * p.Imaginary;
            friction += scale * loss.Friction;
            heat += scale * loss.Heat;
        }

        return (friction, heat);
    }

    // What passes at the far end, and at the open holes if they hear each other, from the far end.
    private (FieldState End, Queue<Mouth> Holes) Mouths()
    {
        if (CoupledPath.Inside(model, band) is not { } path)
        {
            var (p, u) = model.End.At(Omega);
            return (new FieldState(p, u, 0), []);
        }

        var (end, mouths) = path.Mouths(FrequencyVector.All(Omega));
        var first = model.Openings!.HasFarEnd ? 1 : 0;
        return (FieldState.Of(end, 0, model.Impedance), new(mouths.Skip(first)));
    }

    // On the near and on the far side of a hole that hears others.
    private (FieldState Near, FieldState Far) Sides(SideColumn hole, in Mouth mouth)
    {
        var arm = Vector.Create(0.5 * hole.SeriesMass * Omega);
        var far = mouth.Beyond;
        MassPropagator.Put(-arm, ref far);
        var near = new WaveState(mouth.Beyond.P, mouth.Beyond.U + mouth.Taken);
        MassPropagator.Put(arm, ref near);
        return (FieldState.Of(near, 0, model.Impedance), FieldState.Of(far, 0, model.Impedance));
    }

    private FieldState Through(BoreSegment segment, in FieldState far, List<WallLoss> taken)
    {
        if (segment.IsStraight)
        {
            var near = StraightField.Through(segment, Omega, far, model.Impedance, out var loss);
            taken.Add(loss);
            return near;
        }

        var state = far.ToWave();
        new CollocationRun(segment, band, true).Carry(
            FrequencyVector.All(Omega),
            ref state,
            new LossObserver(taken, far.LogScale)
        );
        return FieldState.Of(state, far.LogScale, model.Impedance);
    }

    private FieldState Through(LinePart part, in FieldState far)
    {
        var path = new PlanePath([part], model.End, model.Impedance, band);
        var frequency = FrequencyVector.All(Omega);
        Span<WaveState> state = [far.ToWave()];
        foreach (var propagator in path.Propagators)
        {
            propagator.Carry(new(in frequency), state);
            var excess = propagator.Excess(frequency).Inverse();
            (state[0].P, state[0].U) = (state[0].P * excess, state[0].U * excess);
        }

        return FieldState.Of(state[0], far.LogScale, model.Impedance);
    }

    // ½∫(Re Z'·|U|² + Re Y'·|p|²)dx at the points of the collocation, whose weights integrate it to the same order.
    private readonly struct LossObserver(List<WallLoss> taken, double farLog) : ICollocationObserver
    {
        public void See(
            int step,
            scoped ReadOnlySpan<ComplexVector> series,
            scoped ReadOnlySpan<ComplexVector> shunt,
            scoped ReadOnlySpan<ComplexVector> pressure,
            scoped ReadOnlySpan<ComplexVector> flow,
            scoped ReadOnlySpan<WallFunctions> walls,
            RealVector log
        )
        {
            var (friction, heat) = (0.0, 0.0);
            for (var i = 0; i < series.Length; i++)
            {
                var weight = 0.5 * GaussCollocation.Weights[i];
                friction += weight * series[i].Re[0] * flow[i].Norm[0];
                heat += weight * shunt[i].Re[0] * pressure[i].Norm[0];
            }

            taken.Add(new WallLoss(friction, heat, farLog + log[0]));
        }
    }
}

/// <summary>(p, U)·exp(LogScale): kept near 1, so that no attenuation overflows.</summary>
internal readonly record struct FieldState(Complex Pressure, Complex Flow, double LogScale)
{
    /// <summary>From a wave that began at another scale.</summary>
    public static FieldState Of(in WaveState state, double farLog, double impedance) =>
        Of(state.P.At(0), state.U.At(0), farLog + state.Log[0], impedance);

    /// <summary>From pressure and flow of some scale.</summary>
    public static FieldState Of(Complex p, Complex u, double logScale, double impedance)
    {
        var size = Math.Max(Complex.Abs(p), impedance * Complex.Abs(u));
        return new FieldState(p / size, u / size, logScale + Math.Log(size));
    }

    /// <summary>As a wave, without its scale.</summary>
    public WaveState ToWave() => new(ComplexVector.All(Pressure), ComplexVector.All(Flow));
}
