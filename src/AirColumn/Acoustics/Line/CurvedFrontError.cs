using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Junctions;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Line;

/// <summary>
/// How many cents curved fronts may put a resonance of a bore off: what its corners, steps and mouth send each other by radial modes
/// that die away, as far as one-dimensional waves do not know of it: of steps near each other they do.
/// </summary>
/// <remarks>
/// <para>
/// Flow in a pipe whose wall is displaced by η(x) has, to second order in η and beyond what plane fronts give it, the mass of a length
/// </para>
/// <code>
/// (2/a)∫∫ η'(x)η'(y) Σ exp(−γₙ|x − y|/a)/γₙ dx dy,  J₁(γₙ) = 0.
/// </code>
/// <para>
/// (Put η = ε·cos qx: the mass of potential flow grows by (ε/a)²(qa·I₀(qa)/I₁(qa) − ½).) Where the slope is even, Σ2/γₙ² = ¼ makes of it
/// ∫½a'²dx, the term of <see cref="Wavefronts.Curved"/>. What that leaves out are the jumps: a step of height h sends out h, a corner at
/// which the slope rises by δ sends out −δ·a/γₙ beyond it and δ·a/γₙ before it, and what arrives at another one counts. A mouth takes
/// part as a step of 0.29 radii; in the first order of the slope, that is the taper behind a mouth that curved fronts know. A large step sends more into its
/// wider side, and less into its narrower one, than its height.
/// </para>
/// <para>
/// Each stretch counts by its size, as if each lay where a resonance has most flow, and by as much as the modes reach further at the
/// highest frequency that counts. In families of bores and in random ones it is mostly one to three times the largest shift of the first eight
/// resonances between curved fronts and modes. What it does not know is the friction of the air that crowds round the rim of a mouth, some
/// tenths of a cent in pipes of a few centimetres.
/// </para>
/// </remarks>
internal ref struct CurvedFrontError
{
    private const int Modes = 3;
    private const double CountedResonances = 8;
    private const double HighestShareOfCutOn = 0.7;

    // Of its radius: what a mouth is as a step.
    private const double MouthStep = 0.29;

    // The mass that the square of the slope at a mouth adds, in radii; compared with cones.
    private const double MouthSlope = 0.15;
    private const double MouthSlopeAtCutOn = 0.4;

    // Σ1/γₙ³ beyond the modes that are followed.
    private const double CubesBeyond = 0.0011;

    private const double Gentle = 0.05; // a·a'' that needs no looking into
    private const double Spacing = 0.25; // of the radius
    private const int MostPlaces = 64; // in one smooth part

    private readonly double wavenumber; // of the highest frequency that counts, 1/m
    private Amplitudes field; // what arrives from the left, m
    private Amplitudes ofJumps; // the part of it that comes from steps and corners
    private Amplitudes ofSteps; // the part of that which comes through pipes only: what steps do to each other is known there
    private double pipe; // volume of the pipes behind the last step, over π, m³
    private double length; // what is wrong by so far, m
    private double near; // likewise, with its sign, over a stretch in which a resonance's flow changes little
    private double stretch; // how long that is so far, m

    private CurvedFrontError(double wavenumber) => this.wavenumber = wavenumber;

    private static ReadOnlySpan<double> Gamma => [3.8317059702075125, 7.015586669815619, 10.173468135062722];

    /// <summary>Of the first eight resonances of a bore, as far as they lie below 0.7 of the cut-on.</summary>
    public static double Cents(Bore bore)
    {
        var cutOn = ThinEnd.CutOnKa / bore.Sections.Max(section => section.LargestRadius);
        var error = new CurvedFrontError(
            Math.Min((CountedResonances + 0.5) * Math.PI / bore.LengthMetres, HighestShareOfCutOn * cutOn)
        );
        var before = bore.Sections[0].WallAt(0);
        var place = 0.0;
        foreach (var section in bore.Sections)
        {
            foreach (var part in section.SmoothParts)
            {
                error.Jump(before, part.WallAt(0));
                error.Along(part);
                before = part.WallAt(part.LengthMetres);
                if (bore.HasOpening(place, place + part.LengthMetres))
                {
                    error.ofSteps = default;
                }

                place += part.LengthMetres;
            }
        }

        error.End(before, bore.FarEnd);
        return 1200 / Math.Log(2) * error.length / bore.LengthMetres;
    }

    private readonly double Rate(int mode, double radius)
    {
        var ka = Math.Min(wavenumber * radius, HighestShareOfCutOn * Gamma[0]);
        return Math.Sqrt(Gamma[mode] * Gamma[mode] - ka * ka);
    }

    private void Jump(in Wall left, in Wall right)
    {
        var turn = right.Slope - left.Slope;
        var height = right.Radius - left.Radius;
        var isStep = Bore.IsStep(left.Radius, right.Radius);
        if (!isStep && Math.Abs(turn) < 1e-9)
        {
            return;
        }

        var (arrives, leaves) = isStep ? Strengths(left.Radius, right.Radius) : (0, 0);
        var known = 1 - (isStep ? Unequal(Math.Min(left.Radius, right.Radius)) : 1);
        // A step in a taper: what the slopes beside it send.
        var wrong = 0.5 * height * (left.Slope + right.Slope);
        for (var n = 0; n < Modes; n++)
        {
            var (near, far) = (Rate(n, left.Radius), Rate(n, right.Radius));
            var corner = turn * left.Radius / near;
            wrong +=
                4 / (left.Radius * near) * ((arrives + corner) * field[n] - known * arrives * ofSteps[n]);
            if (!isStep)
            {
                wrong -= 2 * left.Radius * turn * turn / (near * near * near);
            }

            var sends = leaves - turn * right.Radius / far;
            field[n] += sends;
            ofJumps[n] += sends;
            ofSteps[n] += leaves;
        }

        pipe = 0;
        wrong -= isStep ? 0 : 2 * left.Radius * turn * turn * CubesBeyond;
        near += wrong;
    }

    // Steps near each other are given the masses that they have for one flow through all of them. The share of the energy they hold in
    // common that is wrong where the pipe between takes up some of the flow: half the square of what it takes.
    private readonly double Unequal(double radius)
    {
        var taken = wavenumber * pipe / (radius * radius);
        return Math.Min(1, 0.5 * taken * taken);
    }

    // What a step from one radius to another takes from its left side and sends to its right one.
    private static (double Arrives, double Leaves) Strengths(double left, double right)
    {
        var (narrow, wide) = (Math.Min(left, right), Math.Max(left, right));
        var ratio = narrow / wide;
        var sign = right > left ? 1 : -1;
        // By the tabulated mass of the first mode of the wider side, for the flow that the wider side would have.
        var inWide = sign * wide * Math.Sqrt(StepInertance.FirstModeRatio(ratio) * Gamma[0] / (2 * ratio));
        // Between a low step's and a mouth's, compared with rings.
        var fourth = ratio * ratio * ratio * ratio;
        var inNarrow = sign * (wide - narrow) * (MouthStep + (1 - MouthStep) * fourth);
        return right > left ? (inNarrow, inWide) : (inWide, inNarrow);
    }

    private void Along(Section part)
    {
        var (start, middle, end) = (
            part.WallAt(0),
            part.WallAt(part.LengthMetres / 2),
            part.WallAt(part.LengthMetres)
        );
        if (part is CylinderSection or BendSection)
        {
            pipe += part.LengthMetres * start.Radius * start.Radius;
        }
        else
        {
            ofSteps = default;
        }

        if (Math.Max(Bend(start), Math.Max(Bend(middle), Bend(end))) < Gentle)
        {
            Decay(part.LengthMetres, middle.Radius);
            return;
        }

        var least = Math.Min(start.Radius, Math.Min(middle.Radius, end.Radius));
        var places = (int)Math.Clamp(part.LengthMetres / (Spacing * least) + 1, 1, MostPlaces);
        var step = part.LengthMetres / places;
        for (var i = 0; i < places; i++)
        {
            var wall = part.WallAt((i + 0.5) * step);
            Decay(0.5 * step, wall.Radius);
            var d = wall.Radius * wall.Curvature - 3 * wall.Slope * wall.Slope;
            var turn = d * step / wall.Radius;
            // What curved fronts have for it.
            var wrong = d * d * step / (24 * (2 + wall.Slope * wall.Slope) + 1.25 * d * d);
            for (var n = 0; n < Modes; n++)
            {
                var rate = Rate(n, wall.Radius);
                var corner = turn * wall.Radius / rate;
                wrong += 4 / (wall.Radius * rate) * corner * field[n];
                // By itself: spread over the step.
                wrong -= 2 * wall.Radius * turn * turn / (rate * rate * rate);
                field[n] -= corner;
            }

            near += wrong;
            Decay(0.5 * step, wall.Radius);
        }

        static double Bend(in Wall wall) => Math.Abs(wall.Radius * wall.Curvature);
    }

    private void Decay(double distance, double radius)
    {
        stretch += distance;
        if (stretch > 0.5 * Math.PI / wavenumber)
        {
            Count();
        }

        for (var n = 0; n < Modes; n++)
        {
            var factor = Math.Exp(-Rate(n, radius) * distance / radius);
            field[n] *= factor;
            ofJumps[n] *= factor;
            ofSteps[n] *= factor;
        }
    }

    private void Count()
    {
        length += Math.Abs(near);
        (near, stretch) = (0, 0);
    }

    private void End(in Wall wall, BoreEnd end)
    {
        Count();
        var (a, slope) = (wall.Radius, wall.Slope);
        var wrong = 0.0;
        switch (end)
        {
            case ClosedEnd:
                // Next to no flow.
                return;
            case IdealOpenEnd:
                // The bore goes on as its image does: a corner of twice the slope, and all sources once more; half of that is on this side.
                wrong = 4 * a * slope * slope * CubesBeyond;
                for (var n = 0; n < Modes; n++)
                {
                    var rate = Rate(n, a);
                    wrong += 4 * a * slope * slope / (rate * rate * rate);
                    wrong += Math.Abs(
                        2 / (a * rate) * field[n] * field[n] + 8 * slope / (rate * rate) * field[n]
                    );
                }

                break;
            default:
                var share = Math.Min(wavenumber * a / Gamma[0], HighestShareOfCutOn);
                wrong = (MouthSlope + MouthSlopeAtCutOn * share * share) * a * slope * slope;
                for (var n = 0; n < Modes; n++)
                {
                    wrong += Math.Abs(4 * MouthStep / Rate(n, a) * ofJumps[n]);
                }

                break;
        }

        length += wrong;
    }

    [InlineArray(Modes)]
    private struct Amplitudes
    {
        private double first;
    }
}
