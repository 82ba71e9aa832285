using AirColumn.Acoustics;
using AirColumn.Acoustics.Elements;
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
        // w is scaled by the characteristic impedance: crossings of the axes do not depend on it.
        return Angle(pieces, column.Load, new Wave(2 * Math.PI * hertz, column.CharacteristicImpedance));
    }

    private static double Angle(Piece[] pieces, FarEndLoad load, in Wave wave)
    {
        var angle = load.IsClosed ? 0 : Math.Atan(load.LosslessReactance(wave.Omega) / wave.Z0) - Math.PI / 2;
        for (var i = pieces.Length - 1; i >= 0; i--)
        {
            angle = pieces[i].Advance(angle, wave);
        }

        return angle;
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

    private readonly record struct Wave(double Omega, double Z0);

    private abstract class Piece
    {
        /// <summary>θ at the side of the blown end from θ at the side of the far end.</summary>
        public abstract double Advance(double angle, in Wave wave);
    }

    private sealed class Mass(Func<double, double> inertance) : Piece
    {
        // Towards the blown end p changes by −ωM·w while w stays: θ moves within its half turn between zeros of w.
        public override double Advance(double angle, in Wave wave)
        {
            var halfTurns = Math.Floor(angle / Math.PI);
            var (w, p) = Math.SinCos(angle - halfTurns * Math.PI);
            return halfTurns * Math.PI + Math.Atan2(w, p - wave.Omega * inertance(wave.Omega) / wave.Z0 * w);
        }
    }

    private sealed class Slice(SectionElement element, double near, double far, double length) : Piece
    {
        public override double Advance(double angle, in Wave wave)
        {
            var slope = (far - near) / length;
            var factors = element.FactorsAt(new Wall((near + far) / 2, slope, 0), wave.Omega);
            var (series, shunt) = (factors.Series.Real, factors.Shunt.Real);
            var gas = element.Gas;
            var k = wave.Omega / gas.SpeedOfSound * Math.Sqrt(series * shunt);
            // dp/dx = mass/a²·w, so that (ap)' = a'p + mass/a·w.
            var mass = wave.Omega * gas.Density * series / (Math.PI * wave.Z0);

            var (halfTurns, p, w) = Split(angle);
            var sinusoid =
                halfTurns * Math.PI + Math.Atan2((slope * p + mass / far * w) / k, far * p) + k * length;

            (halfTurns, var cos, var sin) = Split(sinusoid);
            p = cos / near;
            w = (k * sin - slope * p) * near / mass;
            return halfTurns * Math.PI + Math.Atan2(w, p);
        }
    }

    private sealed class Shunt(Piece[] branch, FarEndLoad load) : Piece
    {
        // p stays and w gains tan(θ of the branch)·p: θ moves within its half turn between zeros of p, and on by a whole half
        // turn for each pole of the branch's admittance that lies below the frequency.
        public override double Advance(double angle, in Wave wave)
        {
            var (halfTurns, p, w) = Split(angle);
            var (poles, branchP, branchW) = Split(Angle(branch, load, wave));
            return (halfTurns + poles) * Math.PI + Math.Atan2(w * branchP + branchW * p, p * branchP);
        }
    }

    // The angle as a number of half turns between zeros of its cosine, and a vector whose cosine is not negative.
    private static (double HalfTurns, double Cos, double Sin) Split(double angle)
    {
        var halfTurns = Math.Floor(angle / Math.PI + 0.5);
        var (sin, cos) = Math.SinCos(angle - halfTurns * Math.PI);
        return (halfTurns, Math.Max(cos, 0), sin);
    }
}
