using AirColumn.Acoustics;
using AirColumn.Bores;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>Reads what is at the two ends: "farEnd", and "blownEnd" with its "correction".</summary>
internal static class EndReader
{
    /// <summary>Reads how the far end is finished.</summary>
    public static BoreEnd Far(DocumentValue value)
    {
        var end = DocumentObject.Of(value, "{ \"kind\": \"open\", \"wall\": \"3 mm\" }");
        var kind = end.Required("kind", "\"open\"").Word("open", "baffle", "closed", "ideal");
        if (kind == "open")
        {
            end.AllowOnly("kind", "wall");
            var wall = end.Optional("wall")?.Quantity(QuantityText.ParseLength, "3 mm") ?? Length.Zero;
            return Checked.Make(end, () => new OpenEnd(wall));
        }

        if (end.Optional("wall") is { } useless)
        {
            throw new ColumnDocumentException(
                useless.Path,
                $"{useless.Path} means nothing where {end.PathOf("kind")} is '{kind}'; leave it out."
            );
        }

        end.AllowOnly("kind");
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
        var isOpen = document.Optional("blownEnd")?.Word("closed", "open") == "open";
        if (isOpen)
        {
            var correction = document
                .Required("correction", "\"8 mm\", the end correction at the open blown end")
                .Quantity(QuantityText.ParseLength, "8 mm");
            return Checked.Make(document, () => BlownEnd.Open(correction));
        }

        return document.Has("correction")
            ? throw new ColumnDocumentException(
                "correction",
                "correction means nothing where the blown end is closed; leave it out or write \"blownEnd\": \"open\"."
            )
            : BlownEnd.Closed;
    }
}
