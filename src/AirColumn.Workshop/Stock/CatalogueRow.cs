using System.Globalization;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Stock;

/// <summary>A row of a catalogue: its cells, and messages that say where they are.</summary>
internal sealed class CatalogueRow(int line, Dictionary<string, string> cells)
{
    public string Text(string column) =>
        cells[column].Length > 0 ? cells[column] : throw Wrong(column, "it is empty; every row must say it");

    public Length Size(string column) =>
        SizeIfAny(column) ?? throw Wrong(column, "it is empty; write a size");

    public Length? SizeIfAny(string column)
    {
        var text = cells[column];
        if (text.Length == 0)
        {
            return null;
        }

        if (
            !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            || !(value > 0 && value < 10_000)
        )
        {
            throw Wrong(
                column,
                $"'{text}' is not a size above 0; write a number with a decimal point, such as 3.5"
            );
        }

        return Text("unit") switch
        {
            "mm" => Length.FromMillimeters(value),
            "in" => Length.FromMillimeters(25.4 * value),
            var unit => throw Wrong("unit", $"'{unit}' is not known; write mm or in"),
        };
    }

    public DataCertainty Certainty() =>
        Text("certainty") switch
        {
            "read" => DataCertainty.Read,
            "inferred" => DataCertainty.Inferred,
            "memory" => DataCertainty.Memory,
            "own" => DataCertainty.Own,
            var other => throw Wrong(
                "certainty",
                $"'{other}' is not known; write read, inferred, memory or own"
            ),
        };

    public FormatException Wrong(string column, string what) =>
        new($"Line {line.ToString(CultureInfo.InvariantCulture)} of the catalogue, column {column}: {what}.");
}

/// <summary>What rows must be as a whole.</summary>
internal static class CatalogueChecks
{
    public static StockPipe Checked(this StockPipe pipe, CatalogueRow row)
    {
        if (pipe.WallLeast is null && pipe.InsideGiven is null)
        {
            throw row.Wrong("wall_min", "it is empty and so is inside; a pipe needs one of them");
        }

        if (pipe.InsideLeast <= Length.Zero)
        {
            throw row.Wrong("outside_tolerance", "with it and the greatest wall nothing is left of the bore");
        }

        if (pipe.WallMost < pipe.WallLeast)
        {
            throw row.Wrong("wall_max", "it is below wall_min");
        }

        if (!(pipe.Inside > Length.Zero && pipe.Inside < pipe.Outside))
        {
            throw row.Wrong(
                "outside",
                $"a pipe {Wording.Size(pipe.Outside)} outside would be {Wording.Size(pipe.Inside)} inside; the wall must be thinner than the radius"
            );
        }

        return pipe;
    }

    public static StockSocket Checked(this StockSocket socket, CatalogueRow row) =>
        socket.Bottom > socket.Entrance ? throw row.Wrong("bottom", "it is wider than the entrance") : socket;
}
