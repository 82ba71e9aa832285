using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

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
    public static List<DrawnHole> Draw(
        Drawing drawing,
        AssembledTube tube,
        Centreline path,
        Centreline.Room room
    )
    {
        var drawn = new List<DrawnHole>();
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
            drawn.Add(new DrawnHole(hole, x, y - radius, room.At(place.Beside(-place.Radius)).Y));
        }

        return drawn;
    }

    /// <summary>Their diameters above them: one text for neighbours in one pipe that are alike.</summary>
    public static IEnumerable<(int Part, double X, double Y, double Edge, string Text)> Sizes(
        List<DrawnHole> drawn,
        Sizes sizes
    )
    {
        for (var (first, next) = (0, 0); first < drawn.Count; first = next)
        {
            var one = drawn[first].Hole;
            while (
                next < drawn.Count
                // Another pipe may be cut to the same length.
                && ReferenceEquals(drawn[next].Hole.Cut, one.Cut)
                && drawn[next].Hole.Hole.RadiusMillimetres == one.Hole.RadiusMillimetres
            )
            {
                next++;
            }

            var middle = drawn[(first + next) / 2];
            var count = next - first;
            var text = $"⌀ {sizes.Gap(one.Hole.Diameter)}";
            yield return (
                one.Part,
                middle.X,
                middle.Top,
                middle.Edge,
                count == 1 ? text : FormattableString.Invariant($"{count} × {text}")
            );
        }
    }
}

/// <summary>A hole in a drawing.</summary>
/// <param name="Hole">The hole.</param>
/// <param name="X">Its middle.</param>
/// <param name="Top">Its upper rim.</param>
/// <param name="Edge">The upper side of the tube there.</param>
internal readonly record struct DrawnHole(DrilledHole Hole, double X, double Top, double Edge);
