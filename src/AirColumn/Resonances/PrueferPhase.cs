using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn;

/// <summary>
/// The oscillation angle of a column with its dissipation taken out, which counts resonances instead of hunting them.
/// </summary>
/// <remarks>
/// <para>
/// Keep only the reactive parts of the series impedance and shunt admittance (so that about the slowing of the wave by the
/// walls stays) and let the open end reflect everything. With p real and U = j·w, going from the far end towards the
/// blown end, the angle θ of the vector (p, w) never turns back: dθ/dy is positive everywhere (the Prüfer angle of a
/// Sturm–Liouville problem). It also grows with frequency at every place. Hence the number of frequencies below f at
/// which the flow at the blown end vanishes, the poles of Z, is the number of multiples of π that θ(f) has passed, and
/// the number of zeros of Z that of odd multiples of π/2: an exact count, whatever the spacing.
/// </para>
/// <para>
/// Within a slice of cone whose loss terms are taken constant, a·p is a sinusoid, so the angle advances by exactly the
/// wavenumber times the length; no crossing can be missed.
/// </para>
/// <para>
/// A side opening adds the modes of its own column: the angle is continuous in frequency where the branch resonates, since
/// what the tangent loses there the count of half turns gains. Its series mass is negative, so that the angle turns back a
/// little within one half turn, but grows with frequency still: it takes away less mass than the bore beside the opening
/// holds, so that the energy stored in the whole is positive, and that energy is the slope (Foster's theorem).
/// </para>
/// </remarks>
internal sealed class PrueferPhase
{
    private const double LargestRadiusRatio = 1.2;

    private readonly ColumnModel model;
    private readonly Piece[] pieces; // from the blown end

    public PrueferPhase(ColumnModel model)
    {
        this.model = model;
        pieces =
        [
            new Mass(
                (in omega) =>
                {
                    var each = omega;
                    return RealVectors.Each(i => model.Blown.InertanceAt(each[i]));
                }
            ),
            .. model.Way.SelectMany(Pieces),
        ];
    }

    /// <summary>θ at the blown end at frequencies in Hz, unwrapped: from −π/2 at an open far end, 0 at a closed one.</summary>
    public void At(ReadOnlySpan<double> hertz, Span<double> angles)
    {
        for (var i = 0; i < hertz.Length; i += RealVectors.Count)
        {
            var count = Math.Min(RealVectors.Count, hertz.Length - i);
            // w is scaled by the characteristic impedance: crossings of the axes do not depend on it.
            var wave = new Wave(FrequencyVector.OfHertz(hertz.Slice(i, count)), model.Impedance);
            var angle = Angle.At(pieces, model.End, wave);
            for (var lane = 0; lane < count; lane++)
            {
                angles[i + lane] = angle.HalfTurns[lane] * Math.PI + Math.Atan2(angle.W[lane], angle.P[lane]);
            }
        }
    }

    private static IEnumerable<Piece> Pieces(LinePart part) =>
        part switch
        {
            BoreSegment segment => Slices(segment),
            SeriesMass mass => [new Mass((in omega) => mass.InertanceAt(omega))],
            SideColumn side =>
            [
                new Mass((in _) => Vector.Create(side.SeriesMass / 2)),
                new Shunt([.. side.Parts.SelectMany(Pieces)], side.End),
                new Mass((in _) => Vector.Create(side.SeriesMass / 2)),
            ],
            _ => throw new InvalidOperationException($"No phase for {part.GetType().Name}."),
        };

    private static IEnumerable<Slice> Slices(BoreSegment segment)
    {
        var (section, length) = (segment.Section, segment.Length);
        var (start, end) = (section.WallAt(0).Radius, section.WallAt(length).Radius);
        var count = 1 + (int)(Math.Abs(Math.Log(end / start)) / Math.Log(LargestRadiusRatio));
        var (x, radius) = (0.0, start);
        for (var i = 1; i <= count; i++)
        {
            // Equal ratios of radius where the bore is a cone, whatever its taper.
            var next = i == count ? length : length * Share((double)i / count, end / start);
            var nextRadius = section.WallAt(next).Radius;
            yield return new Slice(segment, radius, nextRadius, next - x);
            (x, radius) = (next, nextRadius);
        }
    }

    private static double Share(double part, double ratio) =>
        Math.Abs(ratio - 1) < 1e-6 ? part : (Math.Pow(ratio, part) - 1) / (ratio - 1);

    private readonly struct Wave(in FrequencyVector frequencies, double z0)
    {
        public readonly FrequencyVector Frequencies = frequencies;
        public readonly double Z0 = z0;
    }

    // θ as a number of half turns and a vector of any length whose p is not negative: arctangents are not needed on the way.
    private readonly struct Angle(RealVector halfTurns, RealVector p, RealVector w)
    {
        public readonly RealVector HalfTurns = halfTurns;
        public readonly RealVector P = p;
        public readonly RealVector W = w;

        public static Angle At(Piece[] pieces, Termination end, in Wave wave)
        {
            // 0 at a closed end; else that of the reactance, less π/2.
            var zero = RealVector.Zero;
            var angle = end.IsClosed
                ? new Angle(zero, RealVector.One, zero)
                : Turned(
                    zero,
                    end.LosslessReactance(wave.Frequencies.Omega) * (1 / wave.Z0),
                    -RealVector.One,
                    -RealVector.One
                );
            for (var i = pieces.Length - 1; i >= 0; i--)
            {
                angle = pieces[i].Advance(angle, wave);
            }

            return angle;
        }

        /// <summary>A vector that is one half turn further, in the direction of a sign, where its p has become negative.</summary>
        public static Angle Turned(RealVector halfTurns, RealVector p, RealVector w, RealVector sign)
        {
            var isOver = Vector.LessThan(p, RealVector.Zero);
            return new Angle(
                Vector.ConditionalSelect(
                    isOver,
                    halfTurns + Vector.CopySign(RealVector.One, sign),
                    halfTurns
                ),
                Vector.Abs(p),
                Vector.ConditionalSelect(isOver, -w, w)
            );
        }
    }

    private abstract class Piece
    {
        /// <summary>Computes θ on the side of the blown end, given θ on the side of the far end.</summary>
        public abstract Angle Advance(in Angle angle, in Wave wave);
    }

    private sealed class Mass(VectorFunction<RealVector> inertance) : Piece
    {
        // Towards the blown end p changes by −ωM·w while w stays: θ moves within its half turn between zeros of w.
        public override Angle Advance(in Angle angle, in Wave wave)
        {
            var omega = wave.Frequencies.Omega;
            var y = omega * (1 / wave.Z0) * inertance(omega);
            return Angle.Turned(angle.HalfTurns, angle.P - y * angle.W, angle.W, angle.W);
        }
    }

    private sealed class Slice : Piece
    {
        private const double ThickSeries = 4.0 / 3; // Re 1/H in the limit of thick layers

        private readonly double near;
        private readonly double far;
        private readonly double length;
        private readonly double slope;
        private readonly double mass; // ρ/π times what the fronts make of it
        private readonly double overC;
        private readonly double viscous; // √2/(s·√ω): what the wall adds to the inertia
        private readonly double thermal;
        private readonly double ratio; // γ
        private readonly double front;

        public Slice(BoreSegment segment, double near, double far, double length)
        {
            (this.near, this.far, this.length) = (near, far, length);
            var (gas, wall) = (segment.Gas, segment.Medium.Wall);
            slope = (far - near) / length;
            front = segment.SeriesFactor(new Wall((near + far) / 2, slope, 0));
            mass = gas.Density / Math.PI * front;
            overC = 1 / gas.SpeedOfSound;
            viscous = wall.IsLossless ? 0 : Math.Sqrt(2) / (wall.Unit * (near + far) / 2);
            ratio = gas.HeatCapacityRatio;
            thermal = viscous * (ratio - 1) / Math.Sqrt(gas.PrandtlNumber);
        }

        public override Angle Advance(in Angle angle, in Wave wave)
        {
            var one = RealVector.One;
            var v = wave.Frequencies.InverseRoot;
            var series = Vector.Min(one + viscous * v, Vector.Create(ThickSeries));
            var shunt = Vector.Min(one + thermal * v, Vector.Create(ratio));
            var omega = wave.Frequencies.Omega;
            var k = omega * overC * Vector.SquareRoot(front * series * shunt);
            // dp/dx = mass/a²·w, so that (ap)' = a'p + mass/a·w.
            var inertia = omega * (mass / wave.Z0) * series;

            // a·p and (a·p)'/k turn together by k times the length: by half turns and at most half of one more.
            var (p, w) = (far * angle.P, (slope * angle.P + inertia * (1 / far) * angle.W) / k);
            var turn = k * length;
            var halfTurns = Vector.Round(turn * (1 / Math.PI));
            var rest = RealVectors.MultiplyAdd(halfTurns, Vector.Create(-Math.PI), turn);
            var (sin, cos) = Vector.SinCos(rest);
            var next = Angle.Turned(angle.HalfTurns + halfTurns, p * cos - w * sin, w * cos + p * sin, rest);
            p = next.P * inertia;
            w = (k * next.W - slope * (1 / near) * next.P) * (near * near);
            var scale = one / (p + Vector.Abs(w));
            return new Angle(next.HalfTurns, scale * p, scale * w);
        }
    }

    private sealed class Shunt(Piece[] branch, Termination end) : Piece
    {
        // p stays and w gains tan(θ of the branch)·p: θ moves within its half turn between zeros of p, and on by a whole half
        // turn for each pole of the branch's admittance that lies below the frequency.
        public override Angle Advance(in Angle angle, in Wave wave)
        {
            var side = Angle.At(branch, end, wave);
            var (p, w) = (angle.P * side.P, angle.W * side.P + side.W * angle.P);
            var scale = RealVector.One / (p + Vector.Abs(w));
            return new Angle(angle.HalfTurns + side.HalfTurns, scale * p, scale * w);
        }
    }
}
