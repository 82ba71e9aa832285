using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;
using MathNet.Numerics.LinearAlgebra;

namespace AirColumn.Tests.Acoustics.Propagation;

/// <summary>
/// A column whose open holes hear each other: all pressures and flows at once from one system of linear equations, solved by a
/// general-purpose library.
/// </summary>
internal static class CoupledHoles
{
    /// <summary>Z at the blown end, and the flow out of each opening for a flow of 1 into it, from the far end.</summary>
    public static (Complex Impedance, Complex[] Flows) Of(Column column, double omega)
    {
        var model = column.Model;
        var openings = model.Openings!;
        var pairs = new ComplexVector[openings.Pairs];
        openings.At(System.Numerics.Vector.Create(omega), new ComplexVector[openings.Count], pairs);
        var parts = model.Way;
        var open = parts.Count(part => part is SideColumn { IsOpenHole: true });
        var joints = parts.Length + 1;
        // p and U at each joint, from the blown end; then the flow out of each hole, from the blown end.
        var size = 2 * joints + open;
        var (a, b) = (
            Matrix<Complex>.Build.Dense(size, size),
            MathNet.Numerics.LinearAlgebra.Vector<Complex>.Build.Dense(size)
        );
        var (row, hole) = (0, 0);
        var far = openings.HasFarEnd ? 1 : 0;

        (a[row, 1], b[row++]) = (1, 1);
        for (var i = 0; i < parts.Length; i++)
        {
            var (p, u, p2, u2) = (2 * i, 2 * i + 1, 2 * i + 2, 2 * i + 3);
            switch (parts[i])
            {
                case SideColumn { IsOpenHole: true } side:
                    var arm = Complex.ImaginaryOne * omega * side.SeriesMass / 2;
                    var mine = 2 * joints + hole;
                    var number = openings.Count - 1 - hole;
                    // p − arm·U in the middle on either side.
                    (a[row, p], a[row, u], a[row, p2], a[row++, u2]) = (1, -arm, -1, -arm);
                    // The mouth to the foot: its own wave, and what is heard there.
                    var (pFoot, pHeard, uFoot, uHeard) = Foot(model, side, omega);
                    (a[row, p], a[row, u], a[row, mine]) = (1, -arm, -pFoot);
                    Hear(row++, number, -pHeard);
                    (a[row, u], a[row, u2], a[row, mine]) = (1, -1, -uFoot);
                    Hear(row++, number, -uHeard);
                    hole++;
                    break;
                case var part:
                    var (pp, pu, up, uu) = TwoPortOf(model, part, omega);
                    (a[row, p], a[row, p2], a[row++, u2]) = (1, -pp, -pu);
                    (a[row, u], a[row, p2], a[row++, u2]) = (1, -up, -uu);
                    break;
            }
        }

        var (end, flow) = model.End.At(omega);
        (a[row, 2 * joints - 2], a[row, 2 * joints - 1]) = (flow, -end);
        if (openings.HasFarEnd)
        {
            Hear(row, 0, -1);
        }

        var solution = a.Solve(b);
        return (
            solution[0],
            [.. Enumerable.Range(0, openings.Count).Select(number => solution[ColumnOf(number)])]
        );

        int ColumnOf(int number) => number < far ? 2 * joints - 1 : 2 * joints + openings.Count - 1 - number;

        void Hear(int equation, int number, Complex factor)
        {
            for (var other = 0; other < openings.Count; other++)
            {
                if (other != number)
                {
                    var heard = pairs[OutsideOpenings.PairOf(number, other)].At(0);
                    a[equation, ColumnOf(other)] += factor * heard;
                }
            }
        }
    }

    // What a part makes of (p, U) on its far side, by the way of single columns, which no opening hears.
    private static (Complex PP, Complex PU, Complex UP, Complex UU) TwoPortOf(
        ColumnModel model,
        LinePart part,
        double omega
    )
    {
        var path = new PlanePath([part], model.End, model.Impedance, new Band(omega, omega, 1e-13));
        var frequency = FrequencyVector.All(omega);
        Span<FrequencyVector> both = [frequency, frequency];
        Span<WaveState> states =
        [
            new(ComplexVector.One, ComplexVector.Zero),
            new(ComplexVector.Zero, ComplexVector.All(1 / model.Impedance)),
        ];
        path.Pass(both, states);
        var scale = path.Propagators[0].Excess(frequency).At(0);
        var (first, second) = (Of(states[0]), Of(states[1]));
        return (first.P, model.Impedance * second.P, first.U, model.Impedance * second.U);

        (Complex P, Complex U) Of(in WaveState state) =>
            (state.P.At(0) * Math.Exp(state.Log[0]) / scale, state.U.At(0) * Math.Exp(state.Log[0]) / scale);
    }

    // p and U at the foot for a flow of 1 out of the mouth, and for a pressure of 1 heard at it.
    private static (Complex POwn, Complex PHeard, Complex UOwn, Complex UHeard) Foot(
        ColumnModel model,
        SideColumn side,
        double omega
    )
    {
        var (own, heard) = (
            (P: side.End.At(omega).Pressure, U: Complex.One),
            (P: Complex.One, U: Complex.Zero)
        );
        foreach (var part in side.Parts.Reverse())
        {
            var (pp, pu, up, uu) = TwoPortOf(model, part, omega);
            own = (pp * own.P + pu * own.U, up * own.P + uu * own.U);
            heard = (pp * heard.P + pu * heard.U, up * heard.P + uu * heard.U);
        }

        return (own.P, heard.P, own.U, heard.U);
    }
}
