using System.Text.Json;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>Reads the items of "sections".</summary>
internal static class SectionReader
{
    // That of a section; the message of a section would speak of a length.
    private const double LeastDistanceMillimetres = 0.001;

    private static readonly string[] Shapes = ["cylinder", "cone", "horn", "profile", "bend"];

    private const string CylinderExample =
        "{ \"shape\": \"cylinder\", \"diameter\": \"30 mm\", \"length\": \"25 mm\" }";

    /// <summary>Reads all sections.</summary>
    public static IReadOnlyList<Section> Read(DocumentValue value)
    {
        var items = value.List(BoreReader.Most, $"it must be a list, such as [{CylinderExample}].");
        if (items.Count == 0)
        {
            throw new ColumnDocumentException(
                value.Path,
                $"{value.Path} is empty; a bore needs at least 1 section, such as {CylinderExample}."
            );
        }

        return [.. items.Select(Section)];
    }

    private static Section Section(DocumentValue value)
    {
        var section = DocumentObject.Of(value, CylinderExample);
        var shape = section.Required("shape", "\"cylinder\"");
        // The last one is new in version 2.
        switch (shape.Word(section.Version > 1 ? Shapes : Shapes[..^1]))
        {
            case "cylinder":
                section.AllowOnly(["shape", "diameter", "length"]);
                var diameter = Dimension(section, "diameter");
                var length = Dimension(section, "length");
                return Checked.Make(section, () => new CylinderSection(diameter, length));
            case "cone":
                section.AllowOnly(["shape", "from", "to", "length"]);
                var from = Dimension(section, "from");
                var to = Dimension(section, "to");
                var height = Dimension(section, "length");
                return Checked.Make(section, () => new ConeSection(from, to, height));
            case "profile":
                return Profile(section);
            case "horn":
                return Horn(section);
            default:
                return Bend(section);
        }
    }

    private static BendSection Bend(DocumentObject section)
    {
        section.AllowOnly(["shape", "diameter", "curvatureRadius", "angle", "length"]);
        var diameter = Dimension(section, "diameter");
        var radius = section.Required("curvatureRadius", "\"100 mm\"").Length("100 mm");
        if (section.Optional("length") is not { } along)
        {
            var angle = section.Required("angle", "\"90 °\"").Quantity(QuantityText.ParseAngle, "90 °");
            return Checked.Make(section, () => new BendSection(diameter, radius, angle));
        }

        if (section.Has("angle"))
        {
            throw new ColumnDocumentException(
                along.Path,
                $"{section.Path} gives both how far the bend turns (angle) and its length along the centreline (length); give one of the two."
            );
        }

        var length = along.Length();
        return Checked.Make(section, () => BendSection.OfLength(diameter, radius, length));
    }

    private static HornSection Horn(DocumentObject section)
    {
        var law = Vocabulary.Laws.Read(section.Required("law", "\"exponential\""));
        var isBessel = law == HornLaw.Bessel;
        string[] known = ["shape", "law", "from", "to", "length"];
        section.AllowOnly(isBessel ? [.. known, "exponent"] : known);
        var from = Dimension(section, "from");
        var to = Dimension(section, "to");
        var length = Dimension(section, "length");
        if (!isBessel)
        {
            return Checked.Make(section, () => new HornSection(law, from, to, length));
        }

        var exponent = section.Required("exponent", "0.7").Number();
        return Checked.Make(section, () => new HornSection(from, to, length, exponent));
    }

    private static ProfileSection Profile(DocumentObject section)
    {
        section.AllowOnly(["shape", "points", "join"]);
        var join = section.Optional("join") is { } word ? Vocabulary.Joins.Read(word) : ProfileJoin.Straight;

        const string Example = "[[\"0 mm\", \"38 mm\"], [\"90 mm\", \"70 mm\"]]";
        var list = section.Required("points", Example);
        var items = list.List(
            BoreReader.Most,
            $"it must be a list of places and diameters, such as {Example}."
        );
        var read = new ProfilePoint[items.Count];
        for (var i = 0; i < read.Length; i++)
        {
            read[i] = Point(items[i]);
            RequireReachable(section, list.Path, read.AsSpan(0, i + 1));
        }

        return Checked.Make(section, () => new ProfileSection(read, join), ("points", list.Path));
    }

    private static ProfilePoint Point(DocumentValue value)
    {
        const string Allowed = "it must be a place and a diameter, such as [\"40 mm\", \"44 mm\"].";
        if (value.Json.ValueKind == JsonValueKind.Array && value.Json.GetArrayLength() != 2)
        {
            throw new ColumnDocumentException(
                value.Path,
                $"{value.Path} has {Require.Show(value.Json.GetArrayLength(), "")} items; {Allowed}"
            );
        }

        var pair = value.List(2, Allowed);
        return new ProfilePoint(pair[0].Length(), pair[1].Length());
    }

    // The profile itself checks all this too, but does not say which point was wrong.
    private static void RequireReachable(
        DocumentObject section,
        string path,
        ReadOnlySpan<ProfilePoint> points
    )
    {
        var i = points.Length - 1;
        var (place, diameter) = points[i];
        if (i == 0)
        {
            _ = Checked.Make(
                section,
                () => new CylinderSection(diameter, Length.FromMeters(1)),
                ("diameter", $"{path}[0][1]")
            );
            return;
        }

        var (before, beforeDiameter) = points[i - 1];
        if (place.Meters <= before.Meters)
        {
            throw new ColumnDocumentException(
                $"{path}[{i}][0]",
                $"{path}[{i}][0] is {Require.Show(place.Millimeters, "mm")}, not beyond the point before it at "
                    + $"{Require.Show(before.Millimeters, "mm")}; places must increase. For a sudden change of "
                    + "diameter, use two sections."
            );
        }

        var distance = Length.FromMeters(place.Meters - before.Meters);
        if (distance.Millimeters < LeastDistanceMillimetres)
        {
            throw new ColumnDocumentException(
                $"{path}[{i}][0]",
                $"{path}[{i}][0] is {Require.Show(distance.Millimeters, "mm")} beyond the point before it; allowed is at "
                    + $"least {Require.Show(LeastDistanceMillimetres, "mm")}."
            );
        }

        _ = Checked.Make(
            section,
            () => new ConeSection(beforeDiameter, diameter, distance),
            ("to", $"{path}[{i}][1]"),
            ("length", $"{path}[{i}][0]")
        );
    }

    private static Length Dimension(DocumentObject section, string key) =>
        section.Required(key, "\"30 mm\"").Length();
}
