using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Measurements;

/// <summary>Ways to lower a tube that sounds too high; each is null if it does not reach the note. Immutable.</summary>
public sealed record Lengthening
{
    private Lengthening() { }

    /// <summary>The length of a new pipe in place of the open one, sockets included.</summary>
    public required Length? Pipe { get; init; }

    /// <summary>The distance that a piece of the same inside diameter must reach beyond the open end.</summary>
    public required Length? Beyond { get; init; }

    /// <summary>The inside diameter of a ring of <see cref="RingLength"/> in the open end; such a ring makes the tube softer.</summary>
    public required Length? RingInside { get; init; }

    /// <summary>The length of the ring.</summary>
    public required Length RingLength { get; init; }

    internal static Lengthening For(
        AssembledTube tube,
        Column column,
        Frequency resonance,
        Length ringLength,
        CancellationToken cancellationToken
    )
    {
        var last = column.Bore.Sections[^1];
        var pipe = SectionLength.Solve(
            column,
            new LengthQuestion(tube.FreeSection, resonance) { HolesFromFarEnd = tube.HolesFromFarEnd },
            cancellationToken
        );
        var sleeve = ShortTube.Sleeve(column, last.OutletDiameter, resonance, cancellationToken);
        var ring =
            last is CylinderSection or ConeSection && last.Length > ringLength * 1.1
                ? ShortTube.NarrowEnd(column, ringLength, resonance, cancellationToken)
                : null;
        return new Lengthening
        {
            Pipe = pipe.IsSolved
                ? Length.FromMillimeters(pipe.Length.Millimeters + tube.FreeCut!.Hidden.Millimeters)
                : null,
            Beyond = sleeve.IsSolved ? Length.FromMillimeters(sleeve.Length.Millimeters) : null,
            RingInside = ring is { IsSolved: true }
                ? Length.FromMillimeters(1000 * ring.Values[0].Value)
                : null,
            RingLength = ringLength,
        };
    }
}
