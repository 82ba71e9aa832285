using Complex = System.Numerics.Complex;
using Numbers = MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>;

namespace AirColumn.Tables;

/// <summary>
/// The mouth of a straight pipe of radius 1 with a square rim, by finite elements in its plane only. Three straight spaces meet there:
/// the pipe, the half space in front, and the space around the pipe behind. The pressure over the plane sends a flow into each, which is
/// computed without any step along the axis; the pressure is the one at which the flows balance.
/// </summary>
internal sealed class MouthPlane
{
    // With this, baffled ends are within 6e-10 of radiation-flanged.csv.
    private static readonly Fineness Fine = new(11, 0.2, 1e-6);

    private const double RealBeyond = 0.7; // how far past the outer edge the radius is real
    private const double Angle = -0.9; // of the radius from there on
    private const int Outermost = 16; // elements there
    private const double FirstLength = 0.8;
    private const double Growth = 1.7;

    private readonly DuctModes pipe;
    private readonly OpenSpace front;
    private readonly OpenSpace? behind; // none behind a baffle
    private readonly int outerEdge;

    /// <summary>A mouth with this outer radius of the rim: 1 for a thin edge, infinite for a baffle.</summary>
    public MouthPlane(double outer)
    {
        var mesh = new RadialElements();
        mesh.AddToEdge(1, Fine);
        pipe = new DuctModes(mesh, mesh.Last);
        var isBaffle = double.IsInfinity(outer);
        if (outer > 1 && !isBaffle)
        {
            mesh.AddFromEdge((1 + outer) / 2, Fine);
            mesh.AddToEdge(outer, Fine);
        }

        outerEdge = mesh.Last;
        var end = (isBaffle ? 1 : outer) + RealBeyond;
        mesh.AddFromEdge(end, Fine);
        Complex far = end;
        for (var i = 0; i < Outermost; i++)
        {
            far += Complex.FromPolarCoordinates(FirstLength * Math.Pow(Growth, i), Angle);
            mesh.Add(far, Fine.Order);
        }

        front = new OpenSpace(mesh, 0, Fine.Smallest);
        behind = isBaffle ? null : new OpenSpace(mesh, outerEdge, Fine.Smallest);
    }

    /// <summary>The field that a plane wave of velocity 1 at the mouth makes there.</summary>
    public MouthField At(double ka)
    {
        var system = front.At(ka);
        var intoPipe = pipe.At(ka * ka);
        var n = intoPipe.RowCount;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                system[i, j] += intoPipe[i, j];
            }
        }

        if (behind?.At(ka) is { } back)
        {
            for (var i = 0; i < back.RowCount; i++)
            {
                for (var j = 0; j < back.RowCount; j++)
                {
                    system[outerEdge + i, outerEdge + j] += back[i, j];
                }
            }
        }

        // dp/ds = jk·v
        var root = Math.Sqrt(Math.PI);
        var flow = Numbers.Build.Dense(
            system.RowCount,
            i => i < n ? new Complex(0, ka * root * pipe.Weights[i, 0]) : 0
        );
        var pressure = system.Solve(flow).SubVector(0, n);
        Complex[] amplitudes =
        [
            .. Enumerable
                .Range(0, n)
                .Select(mode =>
                    Enumerable
                        .Range(0, n)
                        .Aggregate(Complex.Zero, (sum, i) => sum + pipe.Weights[i, mode] * pressure[i])
                ),
        ];
        return new MouthField(
            ka,
            amplitudes[0] / root,
            [
                .. Enumerable
                    .Range(1, n - 1)
                    .Select(mode => (amplitudes[mode] * pipe.AtWall[mode], pipe.Decay(mode, ka * ka))),
            ]
        );
    }
}
