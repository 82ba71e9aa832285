namespace AirColumn.Documents;

/// <summary>Reads the shape of the column, or of a branch: "sections", "farEnd", "holes" and "branches".</summary>
internal static class BoreReader
{
    /// <summary>How many sections a document may have, how many points all profiles together, and how many holes and branches.</summary>
    public const int Most = 100_000;

    private const string HoleExample =
        "{ \"position\": \"300 mm\", \"diameter\": \"8 mm\", \"height\": \"4 mm\" }";

    private const string BranchExample =
        "{ \"position\": \"300 mm\", \"sections\": [ … ], \"farEnd\": { \"kind\": \"closed\" } }";

    /// <summary>Reads the shape that an object describes.</summary>
    public static Bore Read(DocumentObject shape)
    {
        var sections = SectionReader.Read(shape.Required("sections", "[ … ]"));
        var farEnd = EndReader.Far(shape.Required("farEnd", "{ \"kind\": \"open\" }"));
        var holes = List(shape.Optional("holes"), HoleExample, Hole);
        var branches = List(shape.Optional("branches"), BranchExample, Branch);
        return Checked.Make(shape, () => new Bore(sections, farEnd, holes, branches));
    }

    private static IEnumerable<T> List<T>(
        DocumentValue? list,
        string example,
        Func<DocumentObject, T> read
    ) =>
        list is null
            ? []
            :
            [
                .. list.List(Most, $"it must be a list, such as [{example}].")
                    .Select(item => read(DocumentObject.Of(item, example))),
            ];

    private static ToneHole Hole(DocumentObject hole)
    {
        hole.AllowOnly(["name", "position", "diameter", "height", "chimneyWall", "pad"]);
        var name = hole.Optional("name")?.Text();
        var position = hole.Required("position", "\"300 mm\"").Length("300 mm");
        var diameter = hole.Required("diameter", "\"8 mm\"").Length("8 mm");
        var height = hole.Required("height", "\"4 mm\"").Length("4 mm");
        var chimneyWall = hole.Optional("chimneyWall")?.Length("1 mm");
        var pad = hole.Optional("pad") is { } value ? Pad(value) : null;
        return Checked.Make(
            hole,
            () =>
                new ToneHole(position, diameter, height)
                {
                    Name = name,
                    ChimneyWall = chimneyWall,
                    Pad = pad,
                },
            (nameof(ToneHole.ChimneyWall), hole.PathOf("chimneyWall"))
        );
    }

    private static HolePad Pad(DocumentValue value)
    {
        var pad = DocumentObject.Of(value, "{ \"diameter\": \"12 mm\", \"height\": \"3 mm\" }");
        pad.AllowOnly(["diameter", "height"]);
        var diameter = pad.Required("diameter", "\"12 mm\"").Length("12 mm");
        var height = pad.Required("height", "\"3 mm\"").Length("3 mm");
        return Checked.Make(pad, () => new HolePad(height, diameter));
    }

    private static SideBranch Branch(DocumentObject branch)
    {
        branch.AllowOnly(["name", "position", "sections", "farEnd", "branches"]);
        var name = branch.Optional("name")?.Text();
        var position = branch.Required("position", "\"300 mm\"").Length("300 mm");
        var bore = Read(branch);
        return Checked.Make(branch, () => new SideBranch(position, bore, name));
    }
}
