namespace AirColumn.Acoustics.Line;

/// <summary>Parts of a line with what branches off them.</summary>
internal static class LineParts
{
    /// <summary>What ends side openings, and theirs.</summary>
    public static IEnumerable<Termination> Ends(IEnumerable<LinePart> parts) =>
        parts.OfType<SideColumn>().SelectMany(side => Ends(side.Parts).Prepend(side.End));

    /// <summary>The segments of bore, those of the branches too.</summary>
    public static IEnumerable<BoreSegment> Segments(IEnumerable<LinePart> parts) =>
        parts.SelectMany(part =>
            part switch
            {
                BoreSegment segment => [segment],
                SideColumn side => Segments(side.Parts),
                _ => [],
            }
        );

    /// <summary>Frequencies, Hz, where a mass or an end is not smooth.</summary>
    public static IEnumerable<double> Corners(IEnumerable<LinePart> parts) =>
        parts.SelectMany(part =>
            part switch
            {
                SeriesMass mass => mass.Corners.Select(omega => omega / (2 * Math.PI)),
                SideColumn side => Corners(side.Parts).Concat(side.End.Corners),
                _ => [],
            }
        );
}
