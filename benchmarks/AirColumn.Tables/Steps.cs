using MathNet.Numerics.LinearAlgebra;

namespace AirColumn.Tables;

/// <summary>
/// The static air mass of an abrupt concentric change of radius (karal1953, kergomard1987), and the part of it that belongs to the first
/// radial mode of the wider side: finite elements in the plane of the step, from which both pipes go on without change. Writes
/// StepInertance.cs: dotnet run -c Release --project benchmarks/AirColumn.Tables -- steps --write
/// </summary>
internal static class Steps
{
    private const int Count = 23;

    public static IEnumerable<Table> Tables { get; } =
    [
        new(
            "steps",
            "Junctions/StepInertance.cs",
            ["Length", "FirstModeLength"],
            Count,
            i => Of((1 - Math.Cos(Math.PI * (i + 1) / (Count + 1))) / 2),
            "F9",
            2e-9
        ),
    ];

    // Over the narrow radius, which is 1 here; α the narrow over the wide one.
    private static double[] Of(double alpha)
    {
        var wide = 1 / alpha;
        var fineness = new Fineness(14, 0.3, 1e-6 * Math.Min(1, wide - 1));
        var mesh = new RadialElements();
        mesh.AddToEdge(1, fineness);
        var narrowPipe = new DuctModes(mesh, mesh.Last);
        mesh.AddFromEdge(wide, fineness);
        var widePipe = new DuctModes(mesh, mesh.Last);

        // The flow π comes in evenly and goes out evenly. A static pressure is free: that of the wide plane mode is set to none.
        var plane = widePipe.Weights.Column(0);
        var system = widePipe.At(0) + plane.OuterProduct(plane);
        var flow = plane * (-alpha * Math.Sqrt(Math.PI));
        AddFirst(system, narrowPipe.At(0));
        flow.SetSubVector(
            0,
            narrowPipe.Count,
            flow.SubVector(0, narrowPipe.Count) + narrowPipe.Weights.Column(0) * Math.Sqrt(Math.PI)
        );

        // The energy, flow·pressure/2, is the sum of those of the modes.
        var pressure = system.Solve(flow);
        var first = widePipe.Weights.Column(1) * pressure;
        return [flow * pressure / Math.PI, widePipe.Decay(1, 0) * first * first / Math.PI];
    }

    private static void AddFirst(Matrix<double> system, Matrix<double> part)
    {
        var n = part.RowCount;
        system.SetSubMatrix(0, 0, system.SubMatrix(0, n, 0, n) + part);
    }
}
