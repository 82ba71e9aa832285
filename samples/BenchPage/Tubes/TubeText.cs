using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BenchPage.Tubes;

/// <summary>A parts file as the page edits it: its text is the truth, and each change makes a new one. Immutable.</summary>
internal sealed class TubeText
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        // A file for people, and never markup.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly JsonObject root;

    private TubeText(JsonObject root)
    {
        this.root = root;
        Text = Written(root);
        Parts = [.. root["parts"]!.AsArray().Select(part => new PartText(part!.AsObject()))];
    }

    /// <summary>The file.</summary>
    public string Text { get; }

    /// <summary>Its parts from the lips.</summary>
    public IReadOnlyList<PartText> Parts { get; }

    /// <summary>What the tube is called.</summary>
    public string Name => root["name"]?.GetValue<string>() ?? "";

    /// <summary>Reads a parts file that the engine has accepted.</summary>
    public static TubeText Parse(string text) => new(JsonNode.Parse(text)!.AsObject());

    public TubeText Named(string name) => Changed(copy => copy["name"] = name);

    /// <summary>A member of a part set to a text; removed where the text is empty.</summary>
    public TubeText With(int part, string key, string text) =>
        Changed(copy => Set(Part(copy, part), key, text.Length == 0 ? null : JsonValue.Create(text)));

    /// <summary>A member of a part set to a number.</summary>
    public TubeText With(int part, string key, double number) =>
        Changed(copy => Set(Part(copy, part), key, JsonValue.Create(number)));

    /// <summary>A member of an object within a part set to a text.</summary>
    public TubeText With(int part, string key, string inner, string text) =>
        Changed(copy =>
        {
            var of = Part(copy, part);
            if (of[key] is not JsonObject)
            {
                of[key] = new JsonObject();
            }

            Set(of[key]!.AsObject(), inner, JsonValue.Create(text));
        });

    /// <summary>The length of one pipe left open, that of the one that was open before set to what was computed for it.</summary>
    public TubeText Opened(int part, string computed) =>
        Changed(copy =>
        {
            foreach (var other in copy["parts"]!.AsArray())
            {
                if (other!["length"]?.ToString() == PartText.Open)
                {
                    other["length"] = computed;
                }
            }

            Part(copy, part)["length"] = PartText.Open;
        });

    /// <summary>Where a new hole goes: behind a pipe and the holes it has.</summary>
    public int BehindHoles(int pipe)
    {
        var at = pipe + 1;
        while (at < Parts.Count && Parts[at].Kind == "hole")
        {
            at++;
        }

        return at;
    }

    public TubeText Inserted(int at, JsonObject part) =>
        Changed(copy => copy["parts"]!.AsArray().Insert(at, part));

    public TubeText Removed(int part) => Changed(copy => copy["parts"]!.AsArray().RemoveAt(part));

    /// <summary>A part moved to another place.</summary>
    public TubeText Moved(int from, int to) =>
        Changed(copy =>
        {
            var parts = copy["parts"]!.AsArray();
            var moved = parts[from];
            parts.RemoveAt(from);
            parts.Insert(to, moved);
        });

    private TubeText Changed(Action<JsonObject> change)
    {
        var copy = root.DeepClone().AsObject();
        change(copy);
        return new TubeText(copy);
    }

    private static JsonObject Part(JsonObject tube, int part) => tube["parts"]![part]!.AsObject();

    private static void Set(JsonObject of, string key, JsonNode? value)
    {
        if (value is null)
        {
            of.Remove(key);
        }
        else
        {
            of[key] = value;
        }
    }

    private static string Written(JsonObject root)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Layout))
        {
            root.WriteTo(json);
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }
}
