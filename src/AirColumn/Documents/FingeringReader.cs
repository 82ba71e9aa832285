namespace AirColumn.Documents;

/// <summary>Reads "fingering" and "fingerings".</summary>
internal static class FingeringReader
{
    private const string Example = "{ \"name\": \"G4\", \"holes\": \"xxx ooo\" }";

    /// <summary>Reads which holes are open, as fingering charts print it.</summary>
    /// <param name="value">The text.</param>
    /// <param name="holes">How many tone holes the bore has.</param>
    public static Fingering Read(DocumentValue value, int holes)
    {
        const string Allowed =
            "write x for a closed hole and o for an open one, from the blown end, as in \"xxx ooo\"; or \"all open\" or \"all closed\".";
        var text = value.Text(Allowed);
        Fingering fingering;
        try
        {
            fingering = Fingering.Parse(text);
        }
        catch (FormatException)
        {
            throw value.Wrong(Allowed);
        }

        return fingering.Count is { } count && count != holes
            ? throw new ColumnDocumentException(
                value.Path,
                $"{value.Path} is for {Require.Show(count, "")} holes; this bore has {Require.Show(holes, "")}. Mark each hole x (closed) or o (open)."
            )
            : fingering;
    }

    /// <summary>Reads the list of fingerings with their names.</summary>
    public static IReadOnlyList<NamedFingering> List(DocumentValue? list, int holes) =>
        list is null
            ? []
            :
            [
                .. list.List(BoreReader.Most, $"it must be a list, such as [{Example}].")
                    .Select(item => Named(DocumentObject.Of(item, Example), holes)),
            ];

    private static NamedFingering Named(DocumentObject fingering, int holes)
    {
        fingering.AllowOnly(["name", "holes"]);
        var name = fingering.Required("name", "\"G4\"").Text();
        var open = Read(fingering.Required("holes", "\"xxx ooo\""), holes);
        return Checked.Make(fingering, () => new NamedFingering(name, open));
    }
}
