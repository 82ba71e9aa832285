using System.Reflection;

namespace AirColumn.Tests;

/// <summary>
/// The floors inside the layers: which folder of the engine may name which. docs/engine.md draws them.
/// </summary>
/// <remarks>
/// What is wrong still is listed here, file by file, so that it can only become less: a test fails for what is not on a list, and for
/// what is on one and has gone.
/// </remarks>
public class FolderTests
{
    private const int LargestCircle = 3; // files: a type, what builds it and what reads it

    // From the ground up: each folder with those it may name, all of them further up in this list. "" holds what checks arguments.
    private static readonly (string Folder, string[] StandsOn)[] Floors =
    [
        ("", []),
        ("Pitches", [""]),
        ("Gases", [""]),
        ("Bores", [""]),
        ("Acoustics/Vectors", []),
        ("Acoustics/Interpolation", ["Acoustics/Vectors"]),
        ("Acoustics/Losses", ["Acoustics/Vectors", "Gases"]),
        ("Acoustics/Radiation", ["", "Acoustics/Interpolation", "Acoustics/Vectors", "Bores"]),
        ("Acoustics/Choices", ["", "Acoustics/Losses", "Acoustics/Radiation", "Bores"]),
        ("Acoustics/Junctions", ["Acoustics/Interpolation", "Acoustics/Radiation", "Acoustics/Vectors"]),
        (
            "Acoustics/Line",
            [
                "",
                "Acoustics/Choices",
                "Acoustics/Junctions",
                "Acoustics/Losses",
                "Acoustics/Radiation",
                "Acoustics/Vectors",
                "Bores",
                "Gases",
            ]
        ),
        (
            "Acoustics/Propagation",
            ["Acoustics/Choices", "Acoustics/Line", "Acoustics/Losses", "Acoustics/Vectors", "Bores", "Gases"]
        ),
        ("Acoustics/Spectra", ["Acoustics/Interpolation", "Acoustics/Propagation", "Acoustics/Vectors"]),
        (
            "Acoustics/Multimodal",
            [
                "",
                "Acoustics/Choices",
                "Acoustics/Interpolation",
                "Acoustics/Line",
                "Acoustics/Losses",
                "Acoustics/Propagation",
                "Acoustics/Spectra",
                "Acoustics/Vectors",
                "Bores",
                "Gases",
            ]
        ),
        (
            "Acoustics",
            [
                "",
                "Acoustics/Choices",
                "Acoustics/Line",
                "Acoustics/Multimodal",
                "Acoustics/Propagation",
                "Acoustics/Radiation",
                "Acoustics/Spectra",
                "Bores",
                "Gases",
            ]
        ),
        (
            "Acoustics/Parameters",
            ["", "Acoustics", "Acoustics/Choices", "Acoustics/Line", "Acoustics/Losses", "Bores", "Gases"]
        ),
        (
            "Acoustics/Sensitivity",
            [
                "",
                "Acoustics",
                "Acoustics/Choices",
                "Acoustics/Interpolation",
                "Acoustics/Line",
                "Acoustics/Losses",
                "Acoustics/Multimodal",
                "Acoustics/Parameters",
                "Acoustics/Propagation",
                "Acoustics/Spectra",
                "Acoustics/Vectors",
                "Bores",
                "Gases",
            ]
        ),
        (
            "Acoustics/Inside",
            [
                "",
                "Acoustics",
                "Acoustics/Choices",
                "Acoustics/Line",
                "Acoustics/Losses",
                "Acoustics/Multimodal",
                "Acoustics/Propagation",
                "Acoustics/Vectors",
                "Bores",
                "Gases",
            ]
        ),
        (
            "Resonances",
            [
                "",
                "Acoustics",
                "Acoustics/Choices",
                "Acoustics/Line",
                "Acoustics/Losses",
                "Acoustics/Parameters",
                "Acoustics/Propagation",
                "Acoustics/Sensitivity",
                "Acoustics/Spectra",
                "Acoustics/Vectors",
                "Bores",
                "Gases",
                "Pitches",
            ]
        ),
        (
            "Design",
            [
                "",
                "Acoustics",
                "Acoustics/Choices",
                "Acoustics/Line",
                "Acoustics/Parameters",
                "Acoustics/Sensitivity",
                "Bores",
                "Gases",
                "Pitches",
                "Resonances",
            ]
        ),
        (
            "Documents",
            [
                "",
                "Acoustics",
                "Acoustics/Choices",
                "Acoustics/Losses",
                "Acoustics/Radiation",
                "Bores",
                "Gases",
            ]
        ),
        (
            "Studies",
            [
                "",
                "Acoustics",
                "Acoustics/Choices",
                "Acoustics/Line",
                "Acoustics/Parameters",
                "Documents",
                "Resonances",
            ]
        ),
    ];

    // Arrows that point up, to be turned round.
    private static readonly (string From, string To)[] PointUp = [];

    private static readonly Lazy<SourceHouse> Engine = new(() =>
        SourceHouse.Below(Path.Combine(Top, "src", "AirColumn"))
    );

    private static string Top =>
        typeof(FolderTests)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "Top")
            .Value!;

    // A name that is not resolved would be an arrow that nobody sees.
    [Fact]
    public void All_names_are_resolved()
    {
        Assert.Empty(Engine.Value.Errors);
        Assert.True(
            Engine.Value.Arrows.Count() > 500,
            "Hardly a file names another: the source was not read."
        );
    }

    [Fact]
    public void Every_folder_has_its_floor() =>
        Assert.Equal(
            Floors.Select(floor => floor.Folder).Order(StringComparer.Ordinal),
            Engine.Value.Folders
        );

    // What stands on nothing above it cannot stand in a circle.
    [Fact]
    public void Floors_stand_on_lower_floors_only()
    {
        for (var i = 0; i < Floors.Length; i++)
        {
            Assert.Empty(Floors[i].StandsOn.Except(Floors[..i].Select(floor => floor.Folder)));
        }
    }

    [Fact]
    public void Folders_name_only_what_they_may_stand_on() =>
        Assert.Empty(Forbidden().Except(PointUp).Select(Show));

    [Fact]
    public void What_points_up_is_on_the_list_only_as_long_as_it_does() =>
        Assert.Empty(PointUp.Except(Forbidden()).Select(Show));

    [Fact]
    public void No_two_folders_name_each_other()
    {
        var folders = Engine
            .Value.Arrows.Except(PointUp)
            .Select(arrow => (From: SourceHouse.FolderOf(arrow.From), To: SourceHouse.FolderOf(arrow.To)))
            .Where(arrow => arrow.From != arrow.To)
            .ToHashSet();
        Assert.Empty(folders.Where(arrow => folders.Contains((arrow.To, arrow.From))).Select(Show));
    }

    [Fact]
    public void Circles_of_files_are_small() =>
        Assert.Empty(
            Engine
                .Value.Circles()
                .Where(circle => circle.Length > LargestCircle)
                .Select(circle => string.Join(", ", circle))
        );

    // The reader itself: it sees through aliases, static usings, var and extension methods, and takes no text for a name.
    [Fact]
    public void Names_are_found_however_they_are_written()
    {
        var house = new SourceHouse(
            new Dictionary<string, string>
            {
                ["Low/A.cs"] =
                    "namespace N; public class A { public static int One => 1; public A Next => new(); }",
                ["Low/B.cs"] =
                    "namespace N; public static class B { public static int Twice(this int i) => 2 * i; }",
                ["Up/C.cs"] = "using static N.A; namespace M; public class C { public int Of() => One; }",
                ["Up/D.cs"] =
                    "using N; namespace M; public class D { public int Of() => 1.Twice(); /* C */ string s = \"C\"; }",
                ["Up/E.cs"] =
                    "using X = N.A; namespace M; public class E { public X? Of() { var a = new F().G; return a.Next; } }",
                ["Up/F.cs"] = "namespace M; public class F { public N.A G => new(); E? e; }",
            }
        );

        Assert.Empty(house.Errors);
        Assert.Equal(
            [
                ("Up/C.cs", "Low/A.cs"),
                ("Up/D.cs", "Low/B.cs"),
                ("Up/E.cs", "Low/A.cs"),
                ("Up/E.cs", "Up/F.cs"),
                ("Up/F.cs", "Low/A.cs"),
                ("Up/F.cs", "Up/E.cs"),
            ],
            house.Arrows.Order()
        );
        Assert.Equal(["Up/E.cs", "Up/F.cs"], Assert.Single(house.Circles()));
    }

    private static IEnumerable<(string From, string To)> Forbidden()
    {
        var allowed = Floors.ToDictionary(floor => floor.Folder, floor => floor.StandsOn);
        return Engine.Value.Arrows.Where(arrow =>
            SourceHouse.FolderOf(arrow.From) is var from
            && SourceHouse.FolderOf(arrow.To) is var to
            && from != to
            && !(allowed.TryGetValue(from, out var below) && below.Contains(to))
        );
    }

    private static string Show((string From, string To) arrow) => $"{arrow.From} names {arrow.To}";
}
