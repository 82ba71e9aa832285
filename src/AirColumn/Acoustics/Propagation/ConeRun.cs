using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>Cones and cylinders in one medium that follow each other without a jump of radius.</summary>
/// <remarks>
/// In a cone, with m the inertia of its fronts and s = a·√(H/m), ψ = s·p obeys ψ'' + k²q·ψ = 0, q = m·T/H − (a'/ka)²·Bend: to first order
/// in the boundary layer the geometry drops out, since Bend is of second. The flow is (πa²H/m)/(jρc)·(ψ'/k − (a'/ka)·Lean·ψ)/s. The
/// factor s is left out: see <see cref="Excess"/>. Sources: benade1974 for the lossless cone, <see cref="BoundaryLayer.OfTaper"/> for
/// the terms.
/// </remarks>
internal sealed class ConeRun : Propagator
{
    private readonly Medium medium;
    private readonly ConeTable table;
    private readonly Port far;
    private readonly Port near;
    private readonly double ratio; // (a far/a near)²

    private ConeRun(Medium medium, ConeTable table, in Port far, in Port near)
    {
        (this.medium, this.table, this.far, this.near) = (medium, table, far, near);
        ratio = far.Radius * far.Radius / (near.Radius * near.Radius);
    }

    /// <summary>Prepares segments, in order from the far end.</summary>
    public static ConeRun Of(ReadOnlySpan<BoreSegment> segments, in Band band, bool isStrong)
    {
        var medium = segments[0].Medium;
        var table = new ConeTable(medium, band, segments.Length, isStrong);
        Port? far = null;
        var near = default(Port);
        foreach (var segment in segments)
        {
            var length = segment.Length;
            var (last, first) = (segment.Section.WallAt(length), segment.Section.WallAt(0));
            var cone = new Cone(
                last.Radius,
                first.Radius,
                length,
                segment.SeriesFactor(segment.Section.WallAt(length / 2))
            );
            table.Add(cone);
            far ??= new Port(cone.Far, cone.Front, cone.Slope);
            near = new Port(cone.Near, cone.Front, cone.Slope);
        }

        table.Close();
        return new ConeRun(medium, table, far!.Value, near);
    }

    /// <inheritdoc/>
    public override void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            Enter(frequencies[i], ref states[i]);
        }

        table.Carry(frequencies, states);
        for (var i = 0; i < frequencies.Length; i++)
        {
            Leave(frequencies[i], ref states[i]);
        }
    }

    /// <summary>s at the near end over s at the far end.</summary>
    public override ComplexVector Excess(in FrequencyVector frequency)
    {
        medium.Wall.At(far.Radius, frequency, out var there, out _);
        medium.Wall.At(near.Radius, frequency, out var here, out _);
        return ((1 / ratio) * (here / there)).Root();
    }

    // ψ'/k = jρc·m/(πa²H)·U + (a'/ka)·Lean·ψ, in the place of the flow.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Enter(in FrequencyVector frequency, ref WaveState state)
    {
        table.AtPort(far, frequency, out var h, out var lean);
        var unit = medium.Impedance * far.Front / (Math.PI * far.Radius * far.Radius);
        var slope = (unit * (state.U / h)).TimesJ();
        state.U = far.Slope == 0 ? slope : ComplexVector.MultiplyAdd(lean, state.P, slope);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Leave(in FrequencyVector frequency, ref WaveState state)
    {
        table.AtPort(near, frequency, out var h, out var lean);
        var unit = Math.PI * near.Radius * near.Radius / (medium.Impedance * near.Front);
        var slope = near.Slope == 0 ? state.U : state.U - lean * state.P;
        state.U = -((unit * (h * slope)).TimesJ());
    }
}
