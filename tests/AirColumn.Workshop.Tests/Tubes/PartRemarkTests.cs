using System.Xml.Linq;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Tubes;

/// <summary>Builds that leak, tear or cannot be are told at the part.</summary>
public class PartRemarkTests
{
    private static readonly PipePart Open = Pipe("pipe", "1-1/2", null);
    private static readonly InsertPart Mouth = new("mouthpiece", Mm(30), Mm(40), Mm(25), Mm(12));
    private static readonly FittingSocket Small = FittingSocket.Of(
        Catalogue.Standard.Socket("pvc-40 1-1/2"),
        Mm(1)
    );

    public static TheoryData<TubePart[], int, string> Doubtful =>
        new()
        {
            // By hand: 48.26 - 3.68 - 4.19 = 40.39 mm inside, less 35 mm.
            { [new InsertPart("plug", Mm(30), Mm(35), Mm(25), Mm(0)), Open], 0, "5.39 mm" },
            // A socket wider than its pipe down to the stop: 50 - 48.26.
            { [Open, Join(new FittingSocket(Mm(50.5), Mm(50), Mm(28), Mm(0)))], 1, "1.74 mm" },
            { [Open, Pipe("second", "1-1/2", 300)], 1, "joins" },
            // Wall against wall: 42.16 mm outside, 40.39 mm inside.
            { [Open, Pipe("second", "1-1/4", 300)], 1, "joins" },
            { [Open, Bend(300, 90), Pipe("second", "1-1/2", 300)], 2, "joins" },
            { [Open, Join(Small, null), Pipe("second", "1-1/2", 300)], 2, "no socket" },
            // By hand: 6 × 48.26 + 48.26 / 2 = 313.7 mm.
            { [Open, Bend(200, 90)], 1, "313.7 mm" },
            { [Open, Bend(400, 900)], 1, "900°" },
            { [Open, Elbow(270), Pipe("second", "1-1/2", 300)], 1, "270°" },
            // By hand: 78 / 52 = 1.5 and a little.
            { [Pipe("pipe", "2", null), new BellPart("bell", Mm(80), Mm(100))], 1, "1.5 times" },
            { [Copper, new BellPart("bell", Mm(50), Mm(100))], 1, "copper" },
            { [Copper, Bend(400, 90)], 1, "copper" },
            { [PipePart.Of("pipe", Catalogue.Standard.Pipe("pp-waste 40"), null, null)], 0, "from memory" },
            { [Open, Join(Small, Small), Pipe("second", "1-1/2", 300)], 2, "from one length" },
        };

    [Theory]
    [MemberData(nameof(Doubtful))]
    public void What_leaks_or_tears_is_said_at_the_part(TubePart[] parts, int at, string says)
    {
        var tube = new TubeAssembly(parts);
        Assert.Contains(
            tube.Remarks,
            remark => remark.Part == at && remark.Text.Contains(says, StringComparison.Ordinal)
        );
        Assert.All(tube.Remarks, remark => Assert.EndsWith(".", remark.Text, StringComparison.Ordinal));
    }

    public static TheoryData<TubePart[], string> Impossible =>
        new()
        {
            { [Open, Bend(25, 180)], "48.3 mm or more" },
            { [Pipe("pipe", "2", null), new BellPart("bell", Mm(200), Mm(30))], "3 times" },
            // By hand: 88.90 - 5.49 - 6.15 = 77.26 mm around 48.26 mm.
            { [Open, Pipe("second", "3", 300)], "open all round" },
            { [Mouth, Pipe("short", "1-1/2", 20), Join(Small, Small), Open], "'short' is 20 mm long" },
            { [Open, Join(Small, Small), Pipe("short", "1-1/2", 20)], "'short' is 20 mm long" },
        };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void What_cannot_be_is_refused(TubePart[] parts, string says)
    {
        var problem = Assert.ThrowsAny<ArgumentException>(() => new TubeAssembly(parts));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tube_as_people_build_it_needs_no_remark() =>
        Assert.Empty(
            new TubeAssembly([
                Mouth,
                Open,
                Join(Small, FittingSocket.Of(Catalogue.Standard.Socket("pvc-40 2"), Mm(1))),
                Pipe("end", "2", 150),
                new BellPart("bell", Mm(72), Mm(60)),
            ]).Remarks
        );

    // On the sheet once, at the step of the part; for programs among the warnings.
    [Fact]
    public void The_sheet_says_it_where_the_part_is_put_in()
    {
        var tube = new TubeAssembly([new InsertPart("plug", Mm(30), Mm(35), Mm(25), Mm(0)), Open]);
        var build = TubeBuilder.Plan(tube, Pitch.Parse("D2"), Tuning.Concert, Room);
        var text = Assert.Single(tube.Remarks).Text;
        Assert.Contains(text, build.Warnings);
        var page = BuildSheet.Html(build, "");
        var shown = XDocument
            .Parse(
                page[
                    page.IndexOf("<body>", StringComparison.Ordinal)..page.IndexOf(
                        "</html>",
                        StringComparison.Ordinal
                    )
                ]
                    .Replace("<wbr>", "", StringComparison.Ordinal),
                LoadOptions.PreserveWhitespace
            )
            .Root!.Value;
        var at = shown.IndexOf(text, StringComparison.Ordinal);
        Assert.True(at > 0, shown);
        Assert.True(at > shown.IndexOf("Putting it together", StringComparison.Ordinal));
        Assert.Equal(at, shown.LastIndexOf(text, StringComparison.Ordinal));
    }

    private static PipePart Copper =>
        PipePart.Of("pipe", Catalogue.Standard.Pipe("copper-l 1-1/2"), null, null);

    private static PipePart Pipe(string name, string size, double? length) =>
        PipePart.Of(
            name,
            Catalogue.Standard.Pipe($"pvc-40 {size}"),
            null,
            length is { } cut ? Mm(cut) : null
        );

    private static BendPart Bend(double radius, double degrees) =>
        new("bend", Mm(radius), Angle.FromDegrees(degrees), Mm(100));

    private static JoinPart Elbow(double degrees) =>
        JoinPart.Elbow("elbow", Small, Small, Mm(41), Mm(60), Angle.FromDegrees(degrees));

    private static JoinPart Join(FittingSocket before, FittingSocket? after = null) =>
        JoinPart.Straight("coupling", before, after, Mm(41), Mm(5));
}
