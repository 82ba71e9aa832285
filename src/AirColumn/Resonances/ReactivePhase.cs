using System.Runtime.Intrinsics;
using AirColumn.Acoustics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Radiation;
using AirColumn.Bores;

namespace AirColumn.Resonances;

/// <summary>
/// The oscillation angle of a column with its dissipation taken out, which counts resonances instead of hunting them.
/// </summary>
/// <remarks>
/// <para>
/// Keep only the reactive parts of the series impedance and shunt admittance (so that the slowing of the wave by the
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
internal sealed class ReactivePhase
{
    /// <summary>How many frequencies are answered at a time.</summary>
    public const int Lanes = ComplexLanes.Count;

    private const double LargestRadiusRatio = 1.2;

    private readonly Column column;
    private readonly Piece[] pieces; // from the blown end

    public ReactivePhase(Column column)
    {
        this.column = column;
        pieces = [new Mass(column.Blown.InertanceAt), .. column.Elements.SelectMany(Pieces)];
    }

    /// <summary>θ at the blown end at a frequency in Hz, unwrapped: from −π/2 at an open far end, 0 at a closed one.</summary>
    public double At(double hertz)
    {
        Span<double> all = stackalloc double[Lanes];
        all.Fill(hertz);
        At(all, all);
        return all[0];
    }

    /// <summary>The same at eight frequencies.</summary>
    public void At(ReadOnlySpan<double> hertz, Span<double> angles)
    {
        // w is scaled by the characteristic impedance: crossings of the axes do not depend on it.
        var wave = new Wave(
            new FrequencyLanes(2 * Math.PI * Vector512.Create(hertz)),
            column.CharacteristicImpedance
        );
        var angle = Angle.At(pieces, column.Load, wave);
        for (var i = 0; i < Lanes; i++)
        {
            angles[i] = angle.HalfTurns[i] * Math.PI + Math.Atan2(angle.W[i], angle.P[i]);
        }
    }

    private static IEnumerable<Piece> Pieces(Element element) =>
        element switch
        {
            SectionElement section => Slices(section),
            InertanceElement mass => [new Mass(mass.InertanceAt)],
            SideElement side =>
            [
                new Mass(_ => side.SeriesMass / 2),
                new Shunt([.. side.Elements.SelectMany(Pieces)], side.Load),
                new Mass(_ => side.SeriesMass / 2),
            ],
            _ => throw new InvalidOperationException($"No reactive phase for {element.GetType().Name}."),
        };

    private static IEnumerable<Slice> Slices(SectionElement element)
    {
        var section = element.Section;
        var (start, end) = (section.WallAt(0).Radius, section.WallAt(section.LengthMetres).Radius);
        var count = 1 + (int)(Math.Abs(Math.Log(end / start)) / Math.Log(LargestRadiusRatio));
        var (x, radius) = (0.0, start);
        for (var i = 1; i <= count; i++)
        {
            // Equal ratios of radius where the bore is a cone, whatever its taper.
            var next =
                i == count
                    ? section.LengthMetres
                    : section.LengthMetres * Share((double)i / count, end / start);
            var nextRadius = section.WallAt(next).Radius;
            yield return new Slice(element, radius, nextRadius, next - x);
            (x, radius) = (next, nextRadius);
        }
    }

    private static double Share(double part, double ratio) =>
        Math.Abs(ratio - 1) < 1e-6 ? part : (Math.Pow(ratio, part) - 1) / (ratio - 1);

    private readonly struct Wave(in FrequencyLanes frequencies, double z0)
    {
        public readonly FrequencyLanes Frequencies = frequencies;
        public readonly double Z0 = z0;

        public Vector512<double> Each(Func<double, double> function)
        {
            Span<double> values = stackalloc double[Lanes];
            for (var i = 0; i < Lanes; i++)
            {
                values[i] = function(Frequencies.Omega[i]);
            }

            return Vector512.Create<double>(values);
        }
    }

    // θ as a number of half turns and a vector of any length whose p is not negative: arctangents are not needed on the way.
    private readonly struct Angle(Vector512<double> halfTurns, Vector512<double> p, Vector512<double> w)
    {
        public readonly Vector512<double> HalfTurns = halfTurns;
        public readonly Vector512<double> P = p;
        public readonly Vector512<double> W = w;

        public static Angle At(Piece[] pieces, FarEndLoad load, in Wave wave)
        {
            // 0 at a closed end; else that of the reactance, less π/2.
            var zero = Vector512<double>.Zero;
            var angle = load.IsClosed
                ? new Angle(zero, Vector512<double>.One, zero)
                : Turned(
                    zero,
                    load.LosslessReactance(wave.Frequencies.Omega) * (1 / wave.Z0),
                    -Vector512<double>.One,
                    -Vector512<double>.One
                );
            for (var i = pieces.Length - 1; i >= 0; i--)
            {
                angle = pieces[i].Advance(angle, wave);
            }

            return angle;
        }

        /// <summary>A vector that is one half turn further, in the direction of a sign, where its p has become negative.</summary>
        public static Angle Turned(
            Vector512<double> halfTurns,
            Vector512<double> p,
            Vector512<double> w,
            Vector512<double> sign
        )
        {
            var isOver = Vector512.LessThan(p, Vector512<double>.Zero);
            return new Angle(
                Vector512.ConditionalSelect(
                    isOver,
                    halfTurns + Vector512.CopySign(Vector512<double>.One, sign),
                    halfTurns
                ),
                Vector512.Abs(p),
                Vector512.ConditionalSelect(isOver, -w, w)
            );
        }
    }

    private abstract class Piece
    {
        /// <summary>θ at the side of the blown end from θ at the side of the far end.</summary>
        public abstract Angle Advance(in Angle angle, in Wave wave);
    }

    private sealed class Mass(Func<double, double> inertance) : Piece
    {
        // Towards the blown end p changes by −ωM·w while w stays: θ moves within its half turn between zeros of w.
        public override Angle Advance(in Angle angle, in Wave wave)
        {
            var y = wave.Frequencies.Omega * (1 / wave.Z0) * wave.Each(inertance);
            return Angle.Turned(angle.HalfTurns, angle.P - y * angle.W, angle.W, angle.W);
        }
    }

    private sealed class Slice : Piece
    {
        private readonly SectionElement element;
        private readonly double near;
        private readonly double far;
        private readonly double length;
        private readonly double factor;

        public Slice(SectionElement element, double near, double far, double length)
        {
            (this.element, this.near, this.far, this.length) = (element, near, far, length);
            factor = element.SeriesFactor(new Wall((near + far) / 2, (far - near) / length, 0));
        }

        public override Angle Advance(in Angle angle, in Wave wave)
        {
            var slope = (far - near) / length;
            var gas = element.Gas;
            var omega = wave.Frequencies.Omega;
            var (viscous, thermal) = SectionLanes.LossesAt(
                (near + far) / 2,
                gas,
                element.Losses,
                wave.Frequencies
            );
            var one = Vector512<double>.One;
            var series = factor * (one + viscous.Re);
            var k = omega * (1 / gas.SpeedOfSound) * Vector512.Sqrt(series * (one + thermal.Re));
            // dp/dx = mass/a²·w, so that (ap)' = a'p + mass/a·w.
            var mass = omega * (gas.Density / (Math.PI * wave.Z0)) * series;

            // a·p and (a·p)'/k turn together by k times the length: by half turns and at most half of one more.
            var (p, w) = (far * angle.P, (slope * angle.P + mass * (1 / far) * angle.W) / k);
            var turn = k * length;
            var halfTurns = Vector512.Round(turn * (1 / Math.PI));
            var rest = Vector512.FusedMultiplyAdd(halfTurns, Vector512.Create(-Math.PI), turn);
            var (sin, cos) = Vector512.SinCos(rest);
            var next = Angle.Turned(angle.HalfTurns + halfTurns, p * cos - w * sin, w * cos + p * sin, rest);
            p = next.P * mass;
            w = (k * next.W - slope * (1 / near) * next.P) * (near * near);
            var scale = one / (p + Vector512.Abs(w));
            return new Angle(next.HalfTurns, scale * p, scale * w);
        }
    }

    private sealed class Shunt(Piece[] branch, FarEndLoad load) : Piece
    {
        // p stays and w gains tan(θ of the branch)·p: θ moves within its half turn between zeros of p, and on by a whole half
        // turn for each pole of the branch's admittance that lies below the frequency.
        public override Angle Advance(in Angle angle, in Wave wave)
        {
            var side = Angle.At(branch, load, wave);
            return new Angle(
                angle.HalfTurns + side.HalfTurns,
                angle.P * side.P,
                angle.W * side.P + side.W * angle.P
            );
        }
    }
}
