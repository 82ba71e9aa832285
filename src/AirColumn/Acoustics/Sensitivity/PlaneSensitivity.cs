using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>For one-dimensional waves: one pass from the far end gives all.</summary>
internal sealed class PlaneSensitivity : StateSensitivity
{
    // Beyond these a strongly attenuated state is brought back near 1.
    private const double Largest = 1e60;

    private readonly ColumnModel column;
    private readonly LinePart[] parts; // from the blown end
    private readonly List<Link<LinePart>>?[] links; // of each part
    private readonly Link<Termination>[] loadLinks; // of what changes the shape of the far end
    private readonly (int Parameter, double Impedance, double Speed)[] gasLinks; // of what changes the gas there only, relative
    private readonly Link<InputTermination>[] blownLinks;
    private readonly Link<OutsideOpenings>[] openingLinks; // of what changes how openings hear each other

    /// <summary>Prepares it.</summary>
    /// <exception cref="ArgumentException">The column has not one of the parameters.</exception>
    public PlaneSensitivity(
        ColumnModel column,
        IReadOnlyList<ColumnParameter> parameters,
        CancellationToken cancellationToken
    )
    {
        this.column = column;
        Parameters = parameters;
        var variations = new Variation[parameters.Count];
        for (var n = 0; n < variations.Length; n++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            variations[n] = Variation.Of(column, parameters[n]);
        }

        parts = column.Way;
        links = LinksOf(parts, variations);
        var loads = Link<Termination>.Of(variations, column.End, variation => variation.Loads);
        var inGas = loads.ToLookup(link =>
            Array.TrueForAll(link.Parts, part => part!.DiffersInGasFrom(link.Self))
        );
        loadLinks = [.. inGas[false]];
        var scales = column.End.Scales;
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
        blownLinks = Link<InputTermination>.Of(variations, column.Blown, variation => variation.Blown);
        openingLinks = column.Openings is { } openings ? LinksOf(openings, variations) : [];
    }

    public IReadOnlyList<ColumnParameter> Parameters { get; }

    private WaveState At(
        PartSensitivity[] prepared,
        CoupledPath? coupled,
        in FrequencyVector frequencies,
        Span<ComplexVector> q,
        CancellationToken cancellationToken
    )
    {
        q.Clear();
        var omega = frequencies.Omega;
        var (p, u) = column.End.At(omega);
        var state = new WaveState(p, u);
        var (far, mouths) = coupled?.Mouths(frequencies) ?? (state, []);
        (state, u) = (far, far.U);
        var opening = coupled is not null && column.Openings!.HasFarEnd ? 1 : 0;
        foreach (var link in loadLinks)
        {
            // Terminations have a flow of 1 or 0 whatever the parameter; u is the flow that passes.
            q[link.Parameter] += u * u * link.DerivativeAt(omega, static (load, in w) => load.At(w).Pressure);
        }

        if (gasLinks.Length > 0)
        {
            var (withImpedance, withSpeed) = column.End.GasSlopes(omega);
            foreach (var (parameter, impedance, speed) in gasLinks)
            {
                q[parameter] += u * u * (impedance * withImpedance + speed * withSpeed);
            }
        }

        for (var i = prepared.Length - 1; i >= 0; i--)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (opening < mouths.Length && prepared[i] is SideSensitivity { IsOpenHole: true } hole)
            {
                hole.Carry(frequencies, mouths[opening++], ref state, q);
                if (opening == mouths.Length)
                {
                    AddOutside(omega, mouths, q);
                }
            }
            else
            {
                prepared[i].Carry(frequencies, ref state, q);
            }

            var size = Math.Max(state.P.Largest(), column.Impedance * state.U.Largest());
            if (size is > Largest or < 1 / Largest)
            {
                state.Log += Vector.Create(Math.Log(size));
                (state.P, state.U) = ((1 / size) * state.P, (1 / size) * state.U);
                foreach (ref var each in q)
                {
                    each = (1 / size) * ((1 / size) * each);
                }
            }
        }

        foreach (var link in blownLinks)
        {
            q[link.Parameter] +=
                link.DerivativeAt(omega, static (blown, in w) => blown.Impedance(w)) * (state.U * state.U);
        }

        state.P = ComplexVector.MultiplyAdd(column.Blown.Impedance(omega), state.U, state.P);
        return state;
    }

    // What openings hear of each other changes with the distance between them and with the air.
    private void AddOutside(RealVector omega, Mouth[] mouths, Span<ComplexVector> q)
    {
        if (openingLinks.Length == 0)
        {
            return;
        }

        var pairs = new ComplexVector[column.Openings!.Pairs];
        var own = new ComplexVector[column.Openings.Count];
        foreach (var link in openingLinks)
        {
            q[link.Parameter] += link.DerivativeAt(
                omega,
                (openings, in w) =>
                {
                    openings.At(w, own, pairs);
                    var sum = ComplexVector.Zero;
                    for (var i = 1; i < mouths.Length; i++)
                    {
                        for (var k = 0; k < i; k++)
                        {
                            var pair = pairs[OutsideOpenings.PairOf(i, k)];
                            sum += 2 * (pair * (mouths[i].Flow * mouths[k].Flow));
                        }
                    }

                    return sum;
                }
            );
        }
    }

    /// <inheritdoc/>
    public override SensitivityPath Prepare(in Band band, CancellationToken cancellationToken) =>
        new Path(this, PartsFor(band, cancellationToken), CoupledPath.Inside(column, band));

    private PartSensitivity[] PartsFor(in Band band, CancellationToken cancellationToken)
    {
        var prepared = new PartSensitivity[parts.Length];
        for (var i = 0; i < prepared.Length; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            prepared[i] = Of(parts[i], links[i] ?? [], band);
        }

        return prepared;
    }

    private Link<OutsideOpenings>[] LinksOf(OutsideOpenings openings, Variation[] variations) =>
        Link<OutsideOpenings>.Of(
            variations,
            openings,
            variation =>
                [
                    .. variation.Lines.Select(line =>
                        OutsideOpenings.Of(line, column.OpenHoles) is { } other && !other.IsLike(openings)
                            ? other
                            : openings
                    ),
                ]
        );

    private static List<Link<LinePart>>?[] LinksOf(LinePart[] parts, Variation[] variations)
    {
        var links = new List<Link<LinePart>>?[parts.Length];
        for (var n = 0; n < variations.Length; n++)
        {
            foreach (var (i, others) in variations[n].Parts)
            {
                (links[i] ??= []).Add(
                    new Link<LinePart>(n, parts[i], variations[n].Weight, variations[n].Weights, others)
                );
            }
        }

        return links;
    }

    private static PartSensitivity Of(LinePart part, List<Link<LinePart>> links, in Band band) =>
        part switch
        {
            BoreSegment segment => new SegmentSensitivity(segment, Of(segment, links), band),
            SeriesMass mass => new MassSensitivity(mass, Of(mass, links)),
            SideColumn side => new SideSensitivity(side, Of(side, links), band),
            _ => throw new InvalidOperationException($"No sensitivity for {part.GetType().Name}."),
        };

    private static Link<T>[] Of<T>(T self, List<Link<LinePart>> links)
        where T : LinePart =>
        [
            .. links.Select(link => new Link<T>(
                link.Parameter,
                self,
                link.Weight,
                link.Weights,
                Array.ConvertAll(link.Parts, part => part as T)
            )),
        ];

    private sealed class Path(PlaneSensitivity owner, PartSensitivity[] prepared, CoupledPath? coupled)
        : SensitivityPath
    {
        public override WaveState At(
            in FrequencyVector frequencies,
            Span<ComplexVector> q,
            CancellationToken cancellationToken
        ) => owner.At(prepared, coupled, frequencies, q, cancellationToken);
    }
}
