using UnitsNet;

namespace AirColumn.Documents;

/// <summary>Reads what is at the two ends: "farEnd", and "blownEnd" with its "correction" or "blownWall".</summary>
internal static class EndReader
{
    /// <summary>Reads how the far end is finished.</summary>
    public static BoreEnd Far(DocumentValue value)
    {
        var end = DocumentObject.Of(value, "{ \"kind\": \"open\", \"wall\": \"3 mm\" }");
        var kind = end.Required("kind", "\"open\"").Word("open", "baffle", "closed", "ideal");
        if (kind == "open")
        {
            end.AllowOnly(["kind", "wall"]);
            var wall = end.Optional("wall")?.Length("3 mm") ?? Length.Zero;
            return Checked.Make(end, () => new OpenEnd(wall));
        }

        if (end.Optional("wall") is { } useless)
        {
            throw new ColumnDocumentException(
                useless.Path,
                $"{useless.Path} has no effect if {end.PathOf("kind")} is '{kind}'; leave it out."
            );
        }

        end.AllowOnly(["kind"]);
        return kind switch
        {
            "baffle" => new BaffledEnd(),
            "closed" => new ClosedEnd(),
            _ => new IdealOpenEnd(),
        };
    }

    /// <summary>Reads how the column is excited.</summary>
    public static BlownEnd Blown(DocumentObject document)
    {
        string[] known = document.Version > 1 ? ["closed", "open", "free"] : ["closed", "open"];
        var kind = document.Optional("blownEnd")?.Word(known) ?? "closed";
        if (kind == "open")
        {
            RefuseUseless(document, "blownWall", "free");
            var correction = document
                .Required("correction", "\"8 mm\", the end correction at the open blown end")
                .Length("8 mm");
            return Checked.Make(document, () => BlownEnd.Open(correction));
        }

        RefuseUseless(document, "correction", "open");
        if (kind == "closed")
        {
            RefuseUseless(document, "blownWall", "free");
            return BlownEnd.Closed;
        }

        var wall = document.Optional("blownWall")?.Length("3 mm") ?? Length.Zero;
        return Checked.Make(document, () => BlownEnd.FreeOpen(wall), ("wall", "blownWall"));
    }

    private static void RefuseUseless(DocumentObject document, string key, string kind)
    {
        if (document.Has(key))
        {
            throw new ColumnDocumentException(
                key,
                $"{key} has a meaning only if the blown end is {kind}; leave it out or write \"blownEnd\": \"{kind}\"."
            );
        }
    }
}
