using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using AirColumn.Documents;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Questions;

/// <summary>A parts file that is being made: each part has usual sizes until others are given.</summary>
internal sealed class TubeDraft(Catalogue catalogue)
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        // The text is a file for people, never part of a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly List<DraftPart> parts = [];

    public string Name { get; private set; } = "";

    /// <summary>What the last pipe is called in the catalogue; null if it was measured.</summary>
    public string? LastStock => LastPipe["stock"];

    private DraftPart LastPipe => parts.FindLast(part => part["part"] == "pipe")!;

    public void Call(string name) => Name = name;

    public DraftPart AddPipe(string length) => Add("pipe", ("length", length));

    /// <summary>In front of all: pushed in as far as it fits, or put over.</summary>
    public DraftPart AddMouth(string kind)
    {
        var inside = Inside(LastPipe);
        var bore = Length.FromMillimeters(Math.Min(30, 0.75 * inside.Millimeters));
        var mouth =
            kind == "insert"
                ? new DraftPart(
                    kind,
                    ("inside", Text(bore)),
                    ("outside", Text(inside)),
                    ("inserted", "25 mm"),
                    ("protrudes", "12 mm")
                )
                : new DraftPart(kind, ("adds", "25 mm"), ("inside", Text(bore)));
        mouth["name"] = QuestionWords.Mouthpiece;
        mouth.IsWhole = true;
        parts.Insert(0, mouth);
        return mouth;
    }

    public DraftPart AddJoin(string kind)
    {
        var inside = Inside(LastPipe);
        if (kind == "elbow")
        {
            var elbow = Add(kind, ("gap", "1 mm"), ("inside", Text(inside)), ("radius", Text(inside)));
            elbow.Number("angle", "90");
            return elbow;
        }

        return Add(kind, ("gap", "1 mm"), ("inside", Text(inside)), ("between", "3 mm"));
    }

    public DraftPart AddBell()
    {
        var wide = Length.FromMillimeters(Math.Round(1.3 * Inside(LastPipe).Millimeters));
        var bell = Add("bell", ("length", "60 mm"), ("inside", Text(wide)));
        bell.IsWhole = true;
        return bell;
    }

    /// <summary>Inside diameter of a pipe that is there.</summary>
    public Length Inside(DraftPart pipe) =>
        pipe["inside"] is { } measured
            ? QuantityText.ParseLength(measured)
            : catalogue.Pipe(pipe["stock"]!).Inside;

    /// <summary>Reads all parts up to the first that is not whole.</summary>
    /// <exception cref="FormatException">Parts do not go together; the message names them.</exception>
    public void Check() => PartsFile.Read(Text(parts.TakeWhile(part => part.IsWhole)), catalogue);

    /// <summary>The parts file.</summary>
    public string Text() => Text(parts);

    private static string Text(Length length) =>
        string.Create(CultureInfo.InvariantCulture, $"{length.Millimeters:0.##} mm");

    private string Text(IEnumerable<DraftPart> some)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("tube", 1);
            json.WriteString("name", Name);
            json.WriteStartArray("parts");
            foreach (var part in some)
            {
                json.WriteStartObject();
                part.Write(json);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private DraftPart Add(string kind, params (string Key, string Text)[] usual)
    {
        var part = new DraftPart(kind, usual);
        parts.Add(part);
        return part;
    }
}
