using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>What <see cref="HeardBeyond"/> did on its way, kept to find the flows out of the openings on the way back.</summary>
/// <remarks>The last that was kept is the first that is needed.</remarks>
internal sealed class MouthTape
{
    private readonly Stack<ComplexVector> rows = new();
    private readonly Stack<PassedHole> holes = new();

    /// <summary>Across a stretch.</summary>
    public void Keep(ReadOnlySpan<ComplexVector> r, in ComplexVector grown, in ComplexVector back)
    {
        Keep(r);
        rows.Push(grown);
        rows.Push(back);
    }

    /// <summary>Past an open hole, for the openings on this side of it.</summary>
    public void Keep(
        in PassedHole hole,
        ReadOnlySpan<ComplexVector> direct,
        ReadOnlySpan<ComplexVector> gamma,
        ReadOnlySpan<ComplexVector> c
    )
    {
        Keep(direct);
        Keep(gamma);
        Keep(c);
        holes.Push(hole);
    }

    /// <summary>Goes back to the far end, a = 1 at the blown end.</summary>
    /// <param name="openings">All of them.</param>
    /// <param name="end">The far end.</param>
    /// <param name="impedance">Z, Pa·s/m³.</param>
    /// <param name="omega">ω.</param>
    /// <returns>What passes at the far end, and at each opening, from the far end.</returns>
    public (WaveState End, Mouth[] Mouths) Unwind(
        OutsideOpenings openings,
        Termination end,
        double impedance,
        RealVector omega
    )
    {
        var mouths = new Mouth[openings.Count];
        var a = ComplexVector.One;
        var first = openings.HasFarEnd ? 1 : 0;
        for (var n = openings.Count; ; n--)
        {
            var nearer = mouths.AsSpan(n);
            var back = rows.Pop();
            a = rows.Pop() * a - back * Sum(nearer);
            if (n == first)
            {
                break;
            }

            var hole = holes.Pop();
            a = hole.Pivot * (a - Sum(nearer));
            var gamma = Sum(nearer);
            var direct = Sum(nearer);
            mouths[n - 1] = hole.MouthFor(a, gamma, direct, impedance);
        }

        var (p, u) = end.At(omega);
        if (!openings.HasFarEnd)
        {
            return (new WaveState(p * a, u * a), mouths);
        }

        var heard = ComplexVector.Zero;
        var pairs = new ComplexVector[openings.Pairs];
        openings.At(omega, new ComplexVector[openings.Count], pairs);
        for (var m = 1; m < mouths.Length; m++)
        {
            heard += pairs[OutsideOpenings.PairOf(m, 0)] * mouths[m].Flow;
        }

        a -= heard / (p + impedance * u);
        var wave = new WaveState(p * a + heard, u * a);
        mouths[0] = new Mouth(u * a, heard, wave, ComplexVector.Zero);
        return (wave, mouths);
    }

    private void Keep(ReadOnlySpan<ComplexVector> values)
    {
        foreach (var value in values)
        {
            rows.Push(value);
        }
    }

    // Of the row that was kept last, over the flows that it is for.
    private ComplexVector Sum(ReadOnlySpan<Mouth> mouths)
    {
        var sum = ComplexVector.Zero;
        for (var i = mouths.Length - 1; i >= 0; i--)
        {
            sum += rows.Pop() * mouths[i].Flow;
        }

        return sum;
    }
}
