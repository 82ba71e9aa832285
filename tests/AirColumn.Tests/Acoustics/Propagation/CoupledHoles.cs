using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;
using MathNet.Numerics.LinearAlgebra;

namespace AirColumn.Tests.Acoustics.Propagation;

/// <summary>
/// A straight tube without losses whose open holes hear each other: all pressures and flows at once from one system of linear equations, solved by a
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
        openings.At(System.Numerics.Vector.Create(omega), pairs);
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
                case BoreSegment segment:
                    var (cos, zSin, ySin) = Line(segment, omega);
                    (a[row, p], a[row, p2], a[row++, u2]) = (1, -cos, -zSin);
                    (a[row, u], a[row, p2], a[row++, u2]) = (1, -ySin, -cos);
                    break;
                case SideColumn { IsOpenHole: true } side:
                    var arm = Complex.ImaginaryOne * omega * side.SeriesMass / 2;
                    var mine = 2 * joints + hole;
                    var number = openings.Count - 1 - hole;
                    // p − arm·U in the middle on either side.
                    (a[row, p], a[row, u], a[row, p2], a[row++, u2]) = (1, -arm, -1, -arm);
                    // The mouth to the foot: its own wave, and what is heard there.
                    var (pFoot, pHeard, uFoot, uHeard) = Foot(side, omega);
                    (a[row, p], a[row, u], a[row, mine]) = (1, -arm, -pFoot);
                    Hear(row++, number, -pHeard);
                    (a[row, u], a[row, u2], a[row, mine]) = (1, -1, -uFoot);
                    Hear(row++, number, -uHeard);
                    hole++;
                    break;
                default:
                    throw new InvalidOperationException("Straight tubes with open holes only.");
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

    private static (Complex Cos, Complex ZSin, Complex YSin) Line(BoreSegment segment, double omega)
    {
        var radius = segment.Section.WallAt(0).Radius;
        var z = segment.Gas.Density * segment.Gas.SpeedOfSound / (Math.PI * radius * radius);
        var kl = omega / segment.Gas.SpeedOfSound * segment.Length;
        var sin = Complex.ImaginaryOne * Math.Sin(kl);
        return (Math.Cos(kl), z * sin, sin / z);
    }

    // p and U at the foot for a flow of 1 out of the mouth, and for a pressure of 1 heard at it.
    private static (Complex POwn, Complex PHeard, Complex UOwn, Complex UHeard) Foot(
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
            (own, heard) = (Through(part, own), Through(part, heard));
        }

        return (own.P, heard.P, own.U, heard.U);

        (Complex P, Complex U) Through(LinePart part, (Complex P, Complex U) there)
        {
            if (part is SeriesMass mass)
            {
                return (there.P + Complex.ImaginaryOne * omega * mass.InertanceAt(omega) * there.U, there.U);
            }

            var (cos, zSin, ySin) = Line((BoreSegment)part, omega);
            return (cos * there.P + zSin * there.U, ySin * there.P + cos * there.U);
        }
    }
}
