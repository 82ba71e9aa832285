using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>Writes the shape of the column, or of a branch: "sections", "farEnd", "holes" and "branches".</summary>
internal static class BoreWriter
{
    /// <summary>The shape as members of the object that has it.</summary>
    public static void Write(Utf8JsonWriter json, Bore bore)
    {
        WriteList(json, "sections", bore.Sections, WriteSection);
        WriteFarEnd(json, bore.FarEnd);
        WriteList(json, "holes", bore.Holes, WriteHole);
        WriteList(json, "branches", bore.Branches, WriteBranch);
    }

    /// <summary>The name of something that may have one.</summary>
    public static void WriteName(Utf8JsonWriter json, string? name)
    {
        if (name is not null)
        {
            json.WriteString("name", name);
        }
    }

    private static void WriteList<T>(
        Utf8JsonWriter json,
        string key,
        IReadOnlyList<T> items,
        Action<Utf8JsonWriter, T> write
    )
    {
        if (items.Count == 0)
        {
            return;
        }

        json.WriteStartArray(key);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteSection(Utf8JsonWriter json, Section section)
    {
        switch (section)
        {
            case CylinderSection cylinder:
                json.WriteString("shape", "cylinder");
                WriteLength(json, "diameter", 2 * cylinder.WallAt(0).Radius);
                WriteLength(json, "length", cylinder.LengthMetres);
                break;
            case ConeSection cone:
                json.WriteString("shape", "cone");
                WriteLength(json, "from", 2 * cone.WallAt(0).Radius);
                WriteLength(json, "to", 2 * cone.WallAt(cone.LengthMetres).Radius);
                WriteLength(json, "length", cone.LengthMetres);
                break;
            case HornSection horn:
                json.WriteString("shape", "horn");
                json.WriteString("law", Vocabulary.Laws.For(horn.Law));
                WriteLength(json, "from", 2 * horn.InletRadius);
                WriteLength(json, "to", 2 * horn.OutletRadius);
                WriteLength(json, "length", horn.LengthMetres);
                if (horn.Exponent is { } exponent)
                {
                    json.WriteNumber("exponent", exponent);
                }

                break;
            case ProfileSection profile:
                json.WriteString("shape", "profile");
                json.WriteString("join", Vocabulary.Joins.For(profile.Join));
                WritePoints(json, profile);
                break;
            case BendSection bend:
                json.WriteString("shape", "bend");
                WriteBend(json, bend);
                break;
            default:
                throw new InvalidOperationException($"Documents have no name for {section.GetType().Name}.");
        }
    }

    // By its angle where some angle gives its length to the last digit.
    private static void WriteBend(Utf8JsonWriter json, BendSection bend)
    {
        var radius = bend.CurvatureRadiusMetres;
        var angle = ExactText.Of(
            bend.LengthMetres,
            text => radius * QuantityText.ParseAngle(text).Radians,
            (bend.Angle.Degrees, "°")
        );
        WriteLength(json, "diameter", 2 * bend.LargestRadius);
        WriteLength(json, "curvatureRadius", radius);
        if (radius * QuantityText.ParseAngle(angle).Radians == bend.LengthMetres)
        {
            json.WriteString("angle", angle);
        }
        else
        {
            WriteLength(json, "length", bend.LengthMetres);
        }
    }

    private static void WritePoints(Utf8JsonWriter json, ProfileSection profile)
    {
        json.WriteStartArray("points");
        for (var i = 0; i < profile.Positions.Count; i++)
        {
            json.WriteStartArray();
            json.WriteStringValue(ExactText.Metres(profile.Positions[i]));
            json.WriteStringValue(ExactText.Metres(2 * profile.WallAt(profile.Positions[i]).Radius));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void WriteFarEnd(Utf8JsonWriter json, BoreEnd end)
    {
        json.WriteStartObject("farEnd");
        switch (end)
        {
            case OpenEnd open:
                json.WriteString("kind", "open");
                WriteLength(json, "wall", open.WallMetres);
                break;
            case BaffledEnd:
                json.WriteString("kind", "baffle");
                break;
            case ClosedEnd:
                json.WriteString("kind", "closed");
                break;
            case IdealOpenEnd:
                json.WriteString("kind", "ideal");
                break;
            default:
                throw new InvalidOperationException($"Documents have no name for {end.GetType().Name}.");
        }

        json.WriteEndObject();
    }

    private static void WriteHole(Utf8JsonWriter json, ToneHole hole)
    {
        WriteName(json, hole.Name);
        WriteLength(json, "position", hole.PositionMetres);
        WriteLength(json, "diameter", 2 * hole.Radius);
        WriteLength(json, "height", hole.HeightMetres);
        if (hole.ChimneyWallMetres is { } wall)
        {
            WriteLength(json, "chimneyWall", wall);
        }

        if (hole.Pad is { } pad)
        {
            json.WriteStartObject("pad");
            WriteLength(json, "diameter", 2 * pad.Radius);
            WriteLength(json, "height", pad.HeightMetres);
            json.WriteEndObject();
        }
    }

    private static void WriteBranch(Utf8JsonWriter json, SideBranch branch)
    {
        WriteName(json, branch.Name);
        WriteLength(json, "position", branch.PositionMetres);
        Write(json, branch.Bore);
    }

    private static void WriteLength(Utf8JsonWriter json, string key, double metres) =>
        json.WriteString(key, ExactText.Metres(metres));
}
