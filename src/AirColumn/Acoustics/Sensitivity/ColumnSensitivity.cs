using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>For one-dimensional waves: one pass from the far end gives all.</summary>
internal sealed class ColumnSensitivity : StateSensitivity
{
    // Beyond these a strongly attenuated state is brought back near 1.
    private const double Largest = 1e60;

    private readonly Column column;
    private readonly ElementSensitivity[] elements; // from the blown end
    private readonly Link<FarEndLoad>[] loadLinks; // of what changes the shape of the far end
    private readonly (int Parameter, double Impedance, double Speed)[] gasLinks; // of what changes the gas there only, relative
    private readonly Link<BlownLoad>[] blownLinks;

    /// <summary>Prepares it.</summary>
    /// <exception cref="ArgumentException">The column has not one of the parameters.</exception>
    public ColumnSensitivity(Column column, IReadOnlyList<ColumnParameter> parameters)
    {
        this.column = column;
        Parameters = parameters;
        Variation[] variations = [.. parameters.Select(parameter => Variation.Of(column, parameter))];
        elements = Elements(column.Elements, variations);
        var loads = Link<FarEndLoad>.Of(variations, column.Load, variation => variation.Loads);
        var inGas = loads.ToLookup(link =>
            Array.TrueForAll(link.Parts, part => part!.DiffersInGasFrom(link.Self))
        );
        loadLinks = [.. inGas[false]];
        var scales = column.Load.Scales;
        gasLinks =
        [
            .. inGas[true]
                .Select(link =>
                    (
                        link.Parameter,
                        link.Derivative(load => load.Scales.Impedance) / scales.Impedance,
                        link.Derivative(load => load.Scales.SpeedOfSound) / scales.SpeedOfSound
                    )
                ),
        ];
        blownLinks = Link<BlownLoad>.Of(variations, column.Blown, variation => variation.Blown);
    }

    public IReadOnlyList<ColumnParameter> Parameters { get; }

    public override (ComplexLanes Pressure, ComplexLanes Flow, double LogScale) At(
        in FrequencyLanes frequencies,
        Span<ComplexLanes> q
    )
    {
        q.Clear();
        var omega = frequencies.Omega;
        var (p, u) = column.Load.At(omega);
        foreach (var link in loadLinks)
        {
            // The flow there is the same in all.
            q[link.Parameter] += u * link.DerivativeAt(omega, static (load, w) => load.At(w).Pressure);
        }

        if (gasLinks.Length > 0)
        {
            var (withImpedance, withSpeed) = column.Load.GasSlopes(omega);
            foreach (var (parameter, impedance, speed) in gasLinks)
            {
                q[parameter] += u * (impedance * withImpedance + speed * withSpeed);
            }
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

    private static ElementSensitivity[] Elements(Element[] elements, Variation[] variations)
    {
        var links = new List<Link<Element>>[elements.Length];
        for (var n = 0; n < variations.Length; n++)
        {
            foreach (var (i, parts) in variations[n].Elements)
            {
                (links[i] ??= []).Add(
                    new Link<Element>(n, elements[i], variations[n].Weight, variations[n].Weights, parts)
                );
            }
        }

        return [.. elements.Select((element, i) => Of(element, links[i] ?? []))];
    }

    private static ElementSensitivity Of(Element element, List<Link<Element>> links) =>
        element switch
        {
            SectionElement section => new SectionSensitivity(section, Of(section, links)),
            InertanceElement mass => new MassSensitivity(mass, Of(mass, links)),
            SideElement side => new SideSensitivity(side, Of(side, links)),
            _ => throw new InvalidOperationException($"No sensitivity for {element.GetType().Name}."),
        };

    private static Link<T>[] Of<T>(T self, List<Link<Element>> links)
        where T : Element =>
        [
            .. links.Select(link => new Link<T>(
                link.Parameter,
                self,
                link.Weight,
                link.Weights,
                Array.ConvertAll(link.Parts, part => part as T)
            )),
        ];
}
