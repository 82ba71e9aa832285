using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>Pressure, flow and U·δp − p·δU for each parameter at the blown end of a column.</summary>
internal sealed class ColumnSensitivity
{
    // Beyond these a strongly attenuated state is brought back near 1.
    private const double Largest = 1e60;

    private readonly Column column;
    private readonly ElementSensitivity[] elements; // from the blown end
    private readonly Link<FarEndLoad>[] loadLinks;
    private readonly Link<BlownLoad>[] blownLinks;

    /// <summary>Prepares it.</summary>
    /// <exception cref="ArgumentException">The column has not one of the parameters.</exception>
    public ColumnSensitivity(Column column, IReadOnlyList<ColumnParameter> parameters)
    {
        this.column = column;
        Parameters = parameters;
        Variation[] variations = [.. parameters.Select(parameter => Variation.Of(column, parameter))];
        elements = [.. column.Elements.Select((element, i) => Of(element, i, variations))];
        loadLinks = Links(variations, column.Load, variant => variant.Load);
        blownLinks = Links(variations, column.Blown, variant => variant.Blown);
    }

    public IReadOnlyList<ColumnParameter> Parameters { get; }

    /// <summary>
    /// Computes them at eight frequencies: for a fixed state at the far end (p, U)·exp(LogScale) and q·exp(2·LogScale), smooth in
    /// frequency whatever resonates.
    /// </summary>
    public (ComplexLanes Pressure, ComplexLanes Flow, double LogScale) At(
        in FrequencyLanes frequencies,
        Span<ComplexLanes> q
    )
    {
        q.Clear();
        var omega = frequencies.Omega;
        Span<Complex> pressures = stackalloc Complex[ComplexLanes.Count];
        Span<Complex> flows = stackalloc Complex[ComplexLanes.Count];
        for (var i = 0; i < ComplexLanes.Count; i++)
        {
            (pressures[i], flows[i]) = column.Load.At(omega.GetElement(i));
        }

        var (p, u) = (ComplexLanes.Of(pressures), ComplexLanes.Of(flows));
        foreach (var link in loadLinks)
        {
            q[link.Parameter] +=
                u * link.Derivative(omega, static (load, w) => load.At(w).Pressure)
                - p * link.Derivative(omega, static (load, w) => load.At(w).Flow);
        }

        var logScale = 0.0;
        for (var i = elements.Length - 1; i >= 0; i--)
        {
            elements[i].Carry(frequencies, ref p, ref u, q);
            var size = Math.Max(p.Largest(), column.CharacteristicImpedance * u.Largest());
            if (size > Largest)
            {
                logScale += Math.Log(size);
                (p, u) = ((1 / size) * p, (1 / size) * u);
                foreach (ref var each in q)
                {
                    each = (1 / size) * ((1 / size) * each);
                }
            }
        }

        foreach (var link in blownLinks)
        {
            q[link.Parameter] += link.Derivative(omega, static (blown, w) => blown.Impedance(w)) * (u * u);
        }

        p += ComplexLanes.Each(i => column.Blown.Impedance(omega.GetElement(i))) * u;
        return (p, u, logScale);
    }

    private static ElementSensitivity Of(Element element, int i, Variation[] variations) =>
        element switch
        {
            SectionElement section => new SectionSensitivity(
                section,
                Links(variations, section, variant => variant.Elements[i] as SectionElement)
            ),
            InertanceElement mass => new MassSensitivity(
                mass,
                Links(variations, mass, variant => variant.Elements[i] as InertanceElement)
            ),
            SideElement side => new SideSensitivity(
                side,
                Links(variations, side, variant => variant.Elements[i] as SideElement)
            ),
            _ => throw new InvalidOperationException($"No sensitivity for {element.GetType().Name}."),
        };

    private static Link<T>[] Links<T>(Variation[] variations, T self, Func<Variant, T?> part)
        where T : class =>
        [.. variations.Select((variation, n) => Link<T>.Of(n, variation, self, part)).OfType<Link<T>>()];
}
