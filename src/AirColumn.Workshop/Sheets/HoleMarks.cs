using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Sheets;

/// <summary>The finger holes of a tube in a drawing of it: each a circle on its centreline, filled where it is open for the drone.</summary>
internal static class HoleMarks
{
    private const double Smallest = 1.6; // radius, that it is seen

    /// <summary>Draws them.</summary>
    /// <param name="drawing">Where to.</param>
    /// <param name="tube">The tube.</param>
    /// <param name="path">Its centreline, one piece for each section.</param>
    /// <param name="room">Where that is drawn.</param>
    /// <returns>The holes and where they are in the drawing.</returns>
    public static List<(DrilledHole Hole, double X, double Y, double Radius)> Draw(
        Drawing drawing,
        AssembledTube tube,
        Centreline path,
        Centreline.Room room
    )
    {
        var drawn = new List<(DrilledHole, double, double, double)>();
        var (section, start) = (0, 0.0);
        foreach (var hole in tube.Holes)
        {
            var at = hole.Position.Millimeters;
            while (
                section + 1 < path.Pieces.Count && at > start + tube.Bore.Sections[section].Length.Millimeters
            )
            {
                start += tube.Bore.Sections[section++].Length.Millimeters;
            }

            var place = path.Along(section, (at - start) / tube.Bore.Sections[section].Length.Millimeters);
            var (x, y) = room.At((place.X, place.Y));
            var radius = Math.Max(Smallest, room.Scale * hole.Hole.RadiusMillimetres);
            drawing.Part = hole.Part;
            drawing.Circle(hole.Hole.IsOpenInDrone ? "hole open" : "hole", x, y, radius);
            drawing.Part = null;
            drawn.Add((hole, x, y, radius));
        }

        return drawn;
    }
}
