using AirColumn.Bores;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>
/// The parts of a tube whose pipe is yet to be cut: a mouth fitting or none, a pipe, a far-end fitting or none.
/// </summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record TubeParts
{
    /// <summary>Describes the parts.</summary>
    /// <param name="pipeDiameter">Inside diameter of the pipe, read with a caliper: 5 mm to 500 mm.</param>
    /// <param name="wall">
    /// Thickness of the wall at the open end (of the far-end fitting if there is one, else of the pipe): 0 to 100 mm. Left
    /// out, it is taken as a thin edge.
    /// </param>
    /// <param name="mouth">The fitting at the blown end; null for a bare pipe.</param>
    /// <param name="end">The fitting at the far end; null for a bare pipe.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public TubeParts(Length pipeDiameter, Length wall = default, Fitting? mouth = null, Fitting? end = null)
    {
        PipeDiameter = Caliper.Diameter(pipeDiameter);
        Wall = Caliper.Wall(wall);
        Mouth = mouth;
        End = end;
    }

    /// <summary>Inside diameter of the pipe.</summary>
    public Length PipeDiameter { get; }

    /// <summary>Thickness of the wall at the open end; 0 for a thin edge.</summary>
    public Length Wall { get; }

    /// <summary>The fitting at the blown end, if any.</summary>
    public Fitting? Mouth { get; }

    /// <summary>The fitting at the far end, if any.</summary>
    public Fitting? End { get; }

    /// <summary>What the fittings together add to the length of the pipe; 0 without fittings.</summary>
    public Length FittingsLength =>
        Length.FromMillimeters((Mouth?.AddedLength.Millimeters ?? 0) + (End?.AddedLength.Millimeters ?? 0));

    /// <summary>Inside diameter where the lips are.</summary>
    public Length BlownDiameter => Mouth?.InsideDiameter ?? PipeDiameter;

    /// <summary>Where the pipe stands among the sections of <see cref="BoreWith"/>: 0 is at the blown end.</summary>
    public int PipeSection => Mouth is null ? 0 : 1;

    /// <summary>The bore of the assembled tube, open and standing free at its far end.</summary>
    /// <param name="pipeLength">Length of the cut pipe: 1 µm to 1 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range.</exception>
    public Bore BoreWith(Length pipeLength)
    {
        var builder = Add(Bore.Build(), Mouth).Cylinder(PipeDiameter, pipeLength);
        return Add(builder, End).OpenEnd(Wall);
    }

    private static BoreBuilder Add(BoreBuilder builder, Fitting? fitting) =>
        fitting is null ? builder : builder.Cylinder(fitting.InsideDiameter, fitting.AddedLength);
}
