using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// Cones one after the other without a step between them, carried in φ and φ' of <see cref="ConeLanes"/> where boundary layers are thin, which
/// saves the way to waves and back at every joint; section by section elsewhere.
/// </summary>
internal sealed class ThinRun : WavePiece
{
    private readonly SectionPiece[] pieces; // from the far end
    private readonly ThinCone[] cones;

    private ThinRun(SectionPiece[] pieces)
    {
        this.pieces = pieces;
        cones = [.. pieces.Select(piece => piece.Cone!)];
        Length = pieces.Sum(piece => piece.Length);
    }

    public override double Length { get; }

    /// <summary>The same pieces, the cones among them gathered into runs.</summary>
    public static WavePiece[] Gather(IEnumerable<WavePiece> pieces)
    {
        var gathered = new List<WavePiece>();
        var run = new List<SectionPiece>();
        foreach (var piece in pieces)
        {
            var cone = piece as SectionPiece is { Cone: not null } section ? section : null;
            if (run.Count > 0 && cone is not { Reflection: 0 })
            {
                gathered.Add(new ThinRun([.. run]));
                run.Clear();
            }

            if (cone is null)
            {
                gathered.Add(piece);
            }
            else
            {
                run.Add(cone);
            }
        }

        if (run.Count > 0)
        {
            gathered.Add(new ThinRun([.. run]));
        }

        return [.. gathered];
    }

    public override LaneMatrix At(in FrequencyLanes frequencies, double tolerance) =>
        TryTogether(frequencies, tolerance, out var total)
            ? pieces[0].Reflected(ToWaves(total, frequencies))
            : OneByOne(frequencies, tolerance);

    private LaneMatrix OneByOne(in FrequencyLanes frequencies, double tolerance)
    {
        var total = pieces[0].At(frequencies, tolerance);
        foreach (var piece in pieces.AsSpan(1))
        {
            total = (piece.At(frequencies, tolerance) * total).InRange();
        }

        return total;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool TryTogether(in FrequencyLanes frequencies, double tolerance, out LaneMatrix total)
    {
        total = default;
        foreach (var cone in cones)
        {
            if (!cone.Serves(frequencies))
            {
                return false;
            }
        }

        if (!cones[0].TryPropagate(frequencies, tolerance, out total))
        {
            return false;
        }

        for (var i = 1; i < cones.Length; i++)
        {
            var (here, there) = (cones[i], cones[i - 1]);
            if (!here.TryPropagate(frequencies, tolerance, out var propagator))
            {
                return false;
            }

            // Pressure and flow go on, (φ' − ηφ)/μ with φ, η = a'/a·(1 − ½·Dζ/ζ).
            var ratio = here.Element.Frame / there.Element.Frame;
            var kink = (here.Slope - ratio * there.Slope) / here.FarRadius;
            var (_, d) = here.WallAt(here.FarRadius, frequencies);
            var jump = kink + (-0.5 * kink) * d;
            total = (
                propagator
                * new LaneMatrix(
                    total.A,
                    total.B,
                    ComplexLanes.MultiplyAdd(jump, total.A, ratio * total.C),
                    ComplexLanes.MultiplyAdd(jump, total.B, ratio * total.D)
                )
            ).InRange();
        }

        return true;
    }

    // ψ = √ζ·φ, w = j/(kμ√ζ)·(φ' − ηφ) at both ends.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private LaneMatrix ToWaves(in LaneMatrix total, in FrequencyLanes frequencies)
    {
        var (here, there) = (cones[^1], cones[0]);
        var (root, d) = here.WallAt(here.NearRadius, frequencies);
        var (farRoot, farD) = there.WallAt(there.FarRadius, frequencies);
        var (g, farG) = (here.Slope / here.NearRadius, there.Slope / there.FarRadius);
        var (eta, farEta) = (g + (-0.5 * g) * d, farG + (-0.5 * farG) * farD);
        var inertia = here.Element.Frame / here.Element.Gas.SpeedOfSound * frequencies.Omega;
        var farInertia = there.Element.Frame / there.Element.Gas.SpeedOfSound * frequencies.Omega;
        var (inverse, farInverse) = (root.Inverse(), farRoot.Inverse());
        var a = ComplexLanes.MultiplyAdd(total.B, farEta, total.A);
        var c = ComplexLanes.MultiplyAdd(total.D, farEta, total.C);
        c -= eta * a;
        var slope = total.D - eta * total.B;
        return new LaneMatrix(
            root * farInverse * a,
            -(farInertia * (root * farRoot * total.B).TimesJ()),
            (Vector512<double>.One / inertia) * (inverse * farInverse * c).TimesJ(),
            (farInertia / inertia) * (inverse * farRoot * slope)
        ).OfWaves();
    }
}
