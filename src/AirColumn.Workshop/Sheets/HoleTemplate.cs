using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>Finger holes to wrap round a pipe, in as many pieces as it takes.</summary>
/// <param name="outside">Outside diameter of the pipe.</param>
/// <param name="edge">The end of the pipe that the holes are measured from, as it is called on the page.</param>
/// <param name="away">What lies beyond the last piece.</param>
internal sealed class HoleTemplate(Length outside, string edge, string away)
{
    /// <summary>What goes under the other end of a piece, mm.</summary>
    public const double Tab = 8;

    private const double PieceLength = 170; // along the pipe, mm

    private readonly double around = Math.PI * outside.Millimeters;

    /// <summary>The pages.</summary>
    /// <param name="holes">The holes: what stands beside each, its diameter, and from the edge to its middle.</param>
    /// <param name="note">The instruction on the page.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pipe is too wide or too narrow for a page.</exception>
    public string Page(IReadOnlyList<(string Label, Length Diameter, Length FromEdge)> holes, string note)
    {
        Require.InRange(around, 15, TemplatePage.Highest - Tab, "mm around", nameof(outside));
        var page = new TemplatePage(TemplateWords.HolesTitle, note);
        var covered = holes.Max(hole => hole.FromEdge.Millimeters + hole.Diameter.Millimeters / 2) + 15;
        var count = (int)Math.Ceiling(covered / PieceLength);
        for (var i = 0; i < count; i++)
        {
            page.Add(Piece(holes, i, count));
        }

        return page.ToString();
    }

    // The edge is at the right of the first piece; the pipe's way round is downwards, its holes along the middle.
    private FullSizePiece Piece(
        IReadOnlyList<(string Label, Length Diameter, Length FromEdge)> holes,
        int number,
        int count
    )
    {
        var piece = new FullSizePiece(PieceLength, around + Tab, TemplateWords.HolesTitle);
        var axis = around / 2;
        piece.Box("scissors", 0, 0, PieceLength, around + Tab);
        piece.Line("thin", 0, axis, PieceLength, axis);
        piece.Line("thin", 0, around, PieceLength, around);
        piece.Text("middle", PieceLength / 2, around + 5, TemplateWords.Overlap);
        piece.Text("end", PieceLength - 2, 5, number == 0 ? edge : TemplateWords.JoinAt(number - 1, count));
        piece.Text("", 2, 5, number == count - 1 ? away : TemplateWords.JoinAt(number, count));
        for (var at = 0; at <= PieceLength; at += 10)
        {
            piece.Line("thin", PieceLength - at, around - 2, PieceLength - at, around);
        }

        foreach (var (label, diameter, fromEdge) in holes)
        {
            var x = PieceLength - (fromEdge.Millimeters - number * PieceLength);
            var radius = diameter.Millimeters / 2;
            // A hole that lies on a joint is on both pieces.
            if (x < -radius || x > PieceLength + radius)
            {
                continue;
            }

            piece.Circle("hole", x, axis, radius);
            piece.Line("thin", x, axis - radius - 3, x, axis + radius + 3);
            piece.Text("middle", Math.Clamp(x, 14, PieceLength - 14), axis - radius - 4, label);
        }

        return piece;
    }
}
