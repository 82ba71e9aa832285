using UnitsNet;

namespace AirColumn.Plots.Drawing;

/// <summary>The wall of a bore as it is drawn, seen from the side: millimetres, bends laid out straight.</summary>
internal sealed class BoreShape
{
    private const int Steps = 48; // of a curved wall

    // A branch longer than this many largest radii is drawn cut off.
    private const double LongestStub = 1.2;

    private readonly List<List<(double X, double Radius)>> walls = [];

    public BoreShape(Bore bore)
    {
        Bore = bore;
        var start = 0.0;
        foreach (var section in bore.Sections)
        {
            var length = section.Length.Millimeters;
            walls.Add([
                .. Places(section)
                    .Select(at =>
                        (start + at * length, section.DiameterAt(section.Length * at).Millimeters / 2)
                    ),
            ]);
            start += length;
        }

        Length = start;
        Widest = 2 * walls.Max(wall => wall.Max(p => p.Radius));
        Narrowest = 2 * walls.Min(wall => wall.Min(p => p.Radius));
        Above = Math.Max(
            Widest / 2,
            bore.Holes.Select(h => RadiusAt(h.Position.Millimeters) + h.Height.Millimeters)
                .DefaultIfEmpty()
                .Max()
        );
        Below =
            bore.Branches.Count == 0
                ? Widest / 2
                : bore.Branches.Max(b => RadiusAt(b.Position.Millimeters) + StubOf(b));
    }

    public Bore Bore { get; }

    public double Length { get; }

    public double Widest { get; }

    public double Narrowest { get; }

    /// <summary>How far it reaches above its axis and below.</summary>
    public double Above { get; }

    /// <inheritdoc cref="Above"/>
    public double Below { get; }

    /// <summary>Draws it with functions that place millimetres on the page.</summary>
    public void Draw(Page page, Func<double, float> x, Func<double, float> y)
    {
        var stroke = 1.2f * page.Look.Stroke;
        foreach (var branch in Bore.Branches)
        {
            Opening(
                page,
                (x, y),
                branch.Position.Millimeters,
                branch.Bore.Sections[0].InletDiameter.Millimeters,
                StubOf(branch),
                -1,
                branch.Bore.FarEnd is ClosedEnd && StubOf(branch) == branch.Bore.Length.Millimeters
            );
        }

        foreach (var hole in Bore.Holes)
        {
            Opening(
                page,
                (x, y),
                hole.Position.Millimeters,
                hole.Diameter.Millimeters,
                hole.Height.Millimeters,
                1
            );
        }

        var whole = walls.SelectMany(wall => wall).ToList();
        page.Shape(
            [
                .. whole.Select(p => (x(p.X), y(p.Radius))),
                .. Enumerable.Reverse(whole).Select(p => (x(p.X), y(-p.Radius))),
            ],
            Palette.Air
        );
        for (var i = 0; i < walls.Count; i++)
        {
            foreach (var side in new[] { 1, -1 })
            {
                Wall(page, walls[i], side, x, y, stroke);
                if (i > 0)
                {
                    // The shoulder of a step.
                    var at = x(walls[i][0].X);
                    page.Line(
                        at,
                        y(side * walls[i - 1][^1].Radius),
                        at,
                        y(side * walls[i][0].Radius),
                        Palette.Ink,
                        stroke
                    );
                }
            }
        }

        if (Bore.FarEnd is ClosedEnd)
        {
            var (at, radius) = walls[^1][^1];
            page.Line(x(at), y(radius), x(at), y(-radius), Palette.Ink, 1.5f * stroke);
        }
    }

    /// <summary>How the far end is finished, in few words.</summary>
    public string FarEnd =>
        Bore.FarEnd switch
        {
            ClosedEnd => "closed end",
            BaffledEnd => "open end in a baffle",
            _ => "open end",
        };

    private static IEnumerable<double> Places(Section section) =>
        section switch
        {
            ProfileSection { Join: ProfileJoin.Straight } profile => profile
                .Points.Select(p => (p.Position - profile.Points[0].Position) / profile.Length)
                .Select(at => Math.Clamp(at, 0, 1)),
            CylinderSection or ConeSection or BendSection => [0, 1],
            _ => Enumerable.Range(0, Steps + 1).Select(i => (double)i / Steps),
        };

    private double RadiusAt(double millimetres)
    {
        var start = 0.0;
        for (var i = 0; i < Bore.Sections.Count; i++)
        {
            var length = Bore.Sections[i].Length.Millimeters;
            if (millimetres <= start + length || i == Bore.Sections.Count - 1)
            {
                var inside = Math.Clamp(millimetres - start, 0, length);
                return Bore.Sections[i].DiameterAt(UnitsNet.Length.FromMillimeters(inside)).Millimeters / 2;
            }

            start += length;
        }

        return 0;
    }

    private double StubOf(SideBranch branch) =>
        Math.Min(branch.Bore.Length.Millimeters, LongestStub * Widest / 2);

    // The air of a hole above the bore or of a branch below it, between its own walls.
    private void Opening(
        Page page,
        (Func<double, float> X, Func<double, float> Y) to,
        double at,
        double diameter,
        double height,
        int side,
        bool hasLid = false
    )
    {
        var radius = RadiusAt(at);
        var (left, right) = (to.X(at - diameter / 2), to.X(at + diameter / 2));
        var (foot, top) = (to.Y(side * radius * 0.98), to.Y(side * (radius + height)));
        page.Shape([(left, foot), (left, top), (right, top), (right, foot)], Palette.Air);
        var stroke = page.Look.Stroke;
        page.Line(left, foot, left, top, Palette.Ink, stroke);
        page.Line(right, foot, right, top, Palette.Ink, stroke);
        if (hasLid)
        {
            page.Line(left, top, right, top, Palette.Ink, stroke);
        }
    }

    // One side of the wall of a section, with gaps where something opens into it.
    private void Wall(
        Page page,
        List<(double X, double Radius)> wall,
        int side,
        Func<double, float> x,
        Func<double, float> y,
        float stroke
    )
    {
        var gaps = (
            side > 0
                ? Bore.Holes.Select(h => (At: h.Position.Millimeters, Half: h.Diameter.Millimeters / 2))
                : Bore.Branches.Select(b =>
                    (At: b.Position.Millimeters, Half: b.Bore.Sections[0].InletDiameter.Millimeters / 2)
                )
        ).ToList();
        for (var i = 1; i < wall.Count; i++)
        {
            var ((x0, r0), (x1, r1)) = (wall[i - 1], wall[i]);
            var from = x0;
            foreach (var (at, half) in gaps.Where(g => g.At + g.Half > x0 && g.At - g.Half < x1))
            {
                Piece(from, Math.Max(from, at - half));
                from = Math.Max(from, Math.Min(x1, at + half));
            }

            Piece(from, x1);

            void Piece(double a, double b)
            {
                if (b > a)
                {
                    page.Line(x(a), y(side * R(a)), x(b), y(side * R(b)), Palette.Ink, stroke);
                }
            }

            double R(double at) => x1 > x0 ? r0 + (r1 - r0) * (at - x0) / (x1 - x0) : r1;
        }
    }
}
