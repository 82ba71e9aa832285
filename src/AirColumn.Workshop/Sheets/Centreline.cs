namespace AirColumn.Workshop.Sheets;

/// <summary>A tube laid out flat, piece by piece: its centreline bends where the tube does, its sides follow.</summary>
/// <param name="steps">Into how many straight lines an eighth of a turn is drawn.</param>
internal sealed class Centreline(int steps)
{
    private readonly List<Piece> pieces = [];
    private double x;
    private double y;
    private double heading; // radians, clockwise from the x axis, since y is downwards

    public IReadOnlyList<Piece> Pieces => pieces;

    /// <summary>Whether it bends anywhere.</summary>
    public bool IsBent { get; private set; }

    /// <summary>A piece that is straight and as wide at its ends as said.</summary>
    public void Straight(double length, double from, double to, bool isHot)
    {
        var points = new List<Place> { Here(from) };
        (x, y) = (x + length * Math.Cos(heading), y + length * Math.Sin(heading));
        points.Add(Here(to));
        pieces.Add(new Piece(points, isHot));
    }

    /// <summary>A piece that is straight.</summary>
    public void Straight(double length, double radius, bool isHot) => Straight(length, radius, radius, isHot);

    /// <summary>A bend. Nobody said to which side: back to where the tube began to point, so that a long one folds and does not coil.</summary>
    public void Turn(double angle, double bendRadius, double radius, bool isHot)
    {
        IsBent = true;
        var side = heading > 1e-9 ? -1 : 1;
        var count = Math.Max(2, (int)Math.Ceiling(steps * angle / (Math.PI / 4)));
        var points = new List<Place> { Here(radius) };
        for (var i = 0; i < count; i++)
        {
            var half = side * angle / count / 2;
            var chord = 2 * bendRadius * Math.Sin(Math.Abs(half));
            heading += half;
            (x, y) = (x + chord * Math.Cos(heading), y + chord * Math.Sin(heading));
            heading += half;
            points.Add(Here(radius));
        }

        pieces.Add(new Piece(points, isHot));
    }

    /// <summary>The place so far along a piece of it.</summary>
    /// <param name="piece">Which piece.</param>
    /// <param name="share">How far: 0 at its beginning, 1 at its end.</param>
    public Place Along(int piece, double share)
    {
        var places = pieces[piece].Places;
        var at = Math.Clamp(share, 0, 1) * (places.Count - 1);
        var i = Math.Min((int)at, places.Count - 2);
        return Place.Between(places[i], places[i + 1], at - i);
    }

    /// <summary>How it is laid into a box, as large as it goes.</summary>
    public Room Fit(double width, double height, double left, double top)
    {
        var all = pieces.SelectMany(piece => piece.Corners).ToList();
        var (lowX, highX) = (all.Min(p => p.X), all.Max(p => p.X));
        var (lowY, highY) = (all.Min(p => p.Y), all.Max(p => p.Y));
        var scale = Math.Min(width / (highX - lowX), height / Math.Max(1e-9, highY - lowY));
        return new Room(scale, left - scale * lowX, top - scale * lowY, scale * (highY - lowY));
    }

    private Place Here(double radius) => new(x, y, heading, radius);

    /// <summary>A place on the centreline.</summary>
    internal readonly record struct Place(double X, double Y, double Heading, double Radius)
    {
        /// <summary>The point so far to the left (negative) or right of the centreline, seen towards the open end.</summary>
        public (double X, double Y) Beside(double distance) =>
            (X - distance * Math.Sin(Heading), Y + distance * Math.Cos(Heading));

        public static Place Between(in Place a, in Place b, double share) =>
            new(
                a.X + share * (b.X - a.X),
                a.Y + share * (b.Y - a.Y),
                a.Heading + share * (b.Heading - a.Heading),
                a.Radius + share * (b.Radius - a.Radius)
            );
    }

    /// <summary>Where a box lies and how large a unit is in it.</summary>
    internal readonly record struct Room(double Scale, double X, double Y, double Height)
    {
        public (double X, double Y) At((double X, double Y) point) =>
            (X + Scale * point.X, Y + Scale * point.Y);
    }

    /// <summary>A part of the tube that is one shape.</summary>
    internal sealed record Piece(IReadOnlyList<Place> Places, bool IsHot)
    {
        public IEnumerable<(double X, double Y)> Corners =>
            Places.SelectMany(place => new[] { place.Beside(-place.Radius), place.Beside(place.Radius) });

        /// <summary>The point half way along it.</summary>
        public Place Middle
        {
            get
            {
                if (Places.Count % 2 == 1)
                {
                    return Places[Places.Count / 2];
                }

                return Place.Between(Places[Places.Count / 2 - 1], Places[Places.Count / 2], 0.5);
            }
        }

        /// <summary>Its one side there and its other side back.</summary>
        /// <param name="room">Where it is drawn.</param>
        /// <param name="up">How many times larger across than along.</param>
        public IReadOnlyList<(double X, double Y)> Outline(Room room, double up) =>
            [
                .. Places.Select(place => room.At(place.Beside(-up * place.Radius))),
                .. Places.Reverse().Select(place => room.At(place.Beside(up * place.Radius))),
            ];
    }
}
