using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Eight angular frequencies, rad/s.</summary>
internal readonly struct FrequencyLanes
{
    public FrequencyLanes(Vector512<double> omega)
    {
        Omega = omega;
        Root = Vector512.Sqrt(omega);
        Lowest = omega.GetElement(0);
        Highest = Lowest;
        for (var i = 1; i < ComplexLanes.Count; i++)
        {
            Lowest = Math.Min(Lowest, omega.GetElement(i));
            Highest = Math.Max(Highest, omega.GetElement(i));
        }
    }

    public Vector512<double> Omega { get; }

    /// <summary>√ω.</summary>
    public Vector512<double> Root { get; }

    public double Lowest { get; }

    public double Highest { get; }
}
