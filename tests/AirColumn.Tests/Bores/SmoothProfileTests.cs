using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Bores;

public class SmoothProfileTests
{
    private static ProfileSection Of(params (double Place, double Diameter)[] points) =>
        new([.. points.Select(p => new ProfilePoint(Mm(p.Place), Mm(p.Diameter)))], ProfileJoin.Smooth);

    private static readonly ProfileSection Bumpy = Of(
        (0, 30),
        (40, 30),
        (55, 48),
        (90, 70),
        (150, 70.5),
        (200, 41)
    );

    [Fact]
    public void Goes_through_its_points_and_never_beyond_them()
    {
        foreach (var point in Bumpy.Points)
        {
            Near.Relative(
                point.Diameter.Meters / 2,
                Bumpy.WallAt(point.Position.Meters).Radius,
                1e-12,
                point.ToString()
            );
        }

        foreach (var part in Bumpy.SmoothParts)
        {
            var (low, high) = (part.SmallestRadius, part.LargestRadius);
            for (var i = 0; i <= 100; i++)
            {
                Assert.InRange(part.WallAt(part.LengthMetres * i / 100).Radius, low - 1e-15, high + 1e-15);
            }
        }
    }

    [Fact]
    public void Slope_is_continuous_and_slope_and_curvature_are_derivatives()
    {
        const double Step = 1e-6;
        var (before, x) = (default(Wall), 0.0);
        foreach (var part in Bumpy.SmoothParts)
        {
            if (x > 0)
            {
                Near.Absolute(before.Slope, part.WallAt(0).Slope, 1e-12, x);
            }

            before = part.WallAt(part.LengthMetres);
            x += part.LengthMetres;
            for (var i = 1; i < 10; i++)
            {
                var at = part.LengthMetres * i / 10;
                var (low, here, high) = (part.WallAt(at - Step), part.WallAt(at), part.WallAt(at + Step));
                Near.Absolute((high.Radius - low.Radius) / (2 * Step), here.Slope, 1e-7, at);
                Near.Absolute((high.Slope - low.Slope) / (2 * Step), here.Curvature, 1e-4, at);
            }
        }
    }

    // 25 points on an exponential horn say nearly as much as the horn: a straight join of them does not.
    [Fact]
    public void Points_on_a_horn_joined_smoothly_sound_like_the_horn()
    {
        var horn = new HornSection(HornLaw.Exponential, Mm(20), Mm(120), Mm(600));
        ProfilePoint[] points =
        [
            .. Enumerable
                .Range(0, 25)
                .Select(i => new ProfilePoint(Mm(25 * i), Mm(2000 * horn.WallAt(0.6 * i / 24).Radius))),
        ];
        var exact = Column(horn, new BaffledEnd()).FirstResonances(4);
        var smooth = Column(new ProfileSection(points, ProfileJoin.Smooth), new BaffledEnd())
            .FirstResonances(4);
        var straight = Column(new ProfileSection(points), new BaffledEnd()).FirstResonances(4);
        for (var i = 0; i < exact.Count; i++)
        {
            // Third-order interpolation against second: about a fiftieth of a cent, and ten times nearer.
            var off = Math.Abs(Cents.Between(exact[i].Frequency, smooth[i].Frequency));
            Assert.True(off < 0.05, $"{off} cents");
            Assert.True(off < 0.2 * Math.Abs(Cents.Between(exact[i].Frequency, straight[i].Frequency)));
        }
    }

    [Fact]
    public void Stretches_keeps_its_join_and_compares_by_value()
    {
        var stretched = Bumpy.WithLength(Mm(400));
        Assert.Equal(ProfileJoin.Smooth, stretched.Join);
        Near.Relative(Bumpy.WallAt(0.03).Radius, stretched.WallAt(0.06).Radius, 1e-12);
        Assert.Equal(Of((0, 30), (50, 40), (70, 41)), Of((0, 30), (50, 40), (70, 41)));
        Assert.NotEqual<Section>(new ProfileSection(Bumpy.Points), Bumpy);
        Assert.Throws<ArgumentOutOfRangeException>(() => new ProfileSection(Bumpy.Points, (ProfileJoin)7));
    }
}
