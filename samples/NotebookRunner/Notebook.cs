using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using static System.Buffers.Binary.BinaryPrimitives;

namespace NotebookRunner;

/// <summary>A notebook file: cells with what they show.</summary>
public sealed partial class Notebook
{
    private static readonly string Packages = $"#r \"nuget: AirColumn.Plots, {Repository.Version}\"";

    private static readonly JsonSerializerOptions Written = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly JsonNode root;

    private Notebook(JsonNode root) => this.root = root;

    private IEnumerable<JsonNode> CodeCells =>
        root["cells"]!.AsArray().OfType<JsonNode>().Where(cell => (string?)cell["cell_type"] == "code");

    /// <summary>
    /// What the cells show, one text for each output: pictures by their size, the rest as it is. What the first cell reports, which
    /// fetches the packages, depends on the machine and is not among it.
    /// </summary>
    public IReadOnlyList<string> Shown => [.. CodeCells.Skip(1).SelectMany(Outputs).Select(Text)];

    /// <summary>What went wrong in the cells, the first included.</summary>
    public IReadOnlyList<string> Errors =>
        [
            .. CodeCells
                .SelectMany(Outputs)
                .Where(output => (string?)output["output_type"] == "error")
                .Select(output => (string?)output["evalue"] ?? ""),
        ];

    /// <summary>A notebook that fetches the packages and then runs these cells.</summary>
    public static Notebook Of(params ReadOnlySpan<string> cells) =>
        new(
            new JsonObject
            {
                ["cells"] = new JsonArray([
                    .. ((string[])[Packages, .. cells]).Select(source => new JsonObject
                    {
                        ["cell_type"] = "code",
                        ["execution_count"] = null,
                        ["metadata"] = new JsonObject(),
                        ["outputs"] = new JsonArray(),
                        ["source"] = source,
                    }),
                ]),
                ["metadata"] = new JsonObject
                {
                    ["kernelspec"] = new JsonObject { ["language"] = "C#", ["name"] = ".net-csharp" },
                },
                ["nbformat"] = 4,
                ["nbformat_minor"] = 5,
            }
        );

    public static Notebook Read(string path) => new(JsonNode.Parse(File.ReadAllText(path))!);

    public void Write(string path) => File.WriteAllText(path, root.ToJsonString(Written) + "\n");

    /// <summary>The same with the packages in another version.</summary>
    public Notebook WithVersion(string version)
    {
        var text = root.ToJsonString();
        var quoted = JsonSerializer.Serialize(Packages)[1..^1];
        return text.Contains(quoted, StringComparison.Ordinal)
            ? new Notebook(
                JsonNode.Parse(
                    text.Replace(
                        quoted,
                        JsonSerializer.Serialize(
                            Packages.Replace(Repository.Version, version, StringComparison.Ordinal)
                        )[1..^1],
                        StringComparison.Ordinal
                    )
                )!
            )
            : throw new InvalidOperationException($"The notebook has no line {Packages}.");
    }

    /// <summary>One notebook of all cells of several, which fetches the packages once.</summary>
    public static Notebook Joined(IReadOnlyList<Notebook> notebooks)
    {
        ArgumentNullException.ThrowIfNull(notebooks);
        var whole = notebooks[0].root.DeepClone();
        var cells = whole["cells"]!.AsArray();
        foreach (var notebook in notebooks.Skip(1))
        {
            foreach (var (cell, n) in notebook.CodeCells.Select((cell, n) => (cell.DeepClone(), n)))
            {
                cell["source"] =
                    n == 0 ? Joined(cell["source"]!).Replace(Packages, "") : Joined(cell["source"]!);
                cells.Add(cell);
            }
        }

        return new Notebook(whole);
    }

    /// <summary>What was joined as so many notebooks again, by the cells that each of them has.</summary>
    public IReadOnlyList<Notebook> Split(IReadOnlyList<Notebook> like)
    {
        ArgumentNullException.ThrowIfNull(like);
        var cells = new Queue<JsonNode>(CodeCells);
        return
        [
            .. like.Select(notebook => new Notebook(
                new JsonObject
                {
                    ["cells"] = new JsonArray([
                        .. notebook.CodeCells.Select(_ => cells.Dequeue().DeepClone()),
                    ]),
                }
            )),
        ];
    }

    /// <summary>The same cells with what another run of them showed.</summary>
    public Notebook WithOutputsOf(Notebook run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var result = new Notebook(root.DeepClone());
        foreach (var ((cell, ran), n) in result.CodeCells.Zip(run.CodeCells).Select((pair, n) => (pair, n)))
        {
            cell["execution_count"] = n + 1;
            cell["outputs"] = n == 0 ? new JsonArray() : new JsonArray([.. Outputs(ran).Select(Kept)]);
        }

        return result;
    }

    private static IEnumerable<JsonNode> Outputs(JsonNode cell) =>
        cell["outputs"]!.AsArray().OfType<JsonNode>();

    // The look of plain values is repeated with each of them.
    private static JsonNode Kept(JsonNode output)
    {
        var kept = output.DeepClone();
        if (kept["data"]?["text/html"] is { } html)
        {
            kept["data"]!["text/html"] = Style().Replace(Joined(html), "").TrimEnd();
        }

        return kept;
    }

    private static string Text(JsonNode output) =>
        (string?)output["output_type"] == "error" ? $"error: {output["evalue"]}"
        : output["text"] is { } stream ? Joined(stream)
        : string.Join(
            '\n',
            output["data"]!
                .AsObject()
                .Select(pair =>
                    $"{pair.Key}: {Picture().Replace(Style().Replace(Joined(pair.Value!), ""), SizeOf).TrimEnd()}"
                )
        );

    private static string Joined(JsonNode text) =>
        (
            text is JsonArray lines ? string.Concat(lines.Select(line => (string?)line)) : (string)text!
        ).Replace("\r\n", "\n", StringComparison.Ordinal);

    // Width and height stand in the header of a PNG.
    private static string SizeOf(Match picture)
    {
        var bytes = Convert.FromBase64String(picture.Groups[1].Value);
        var (width, height) = (ReadInt32BigEndian(bytes.AsSpan(16)), ReadInt32BigEndian(bytes.AsSpan(20)));
        return $"src=\"PNG of {width} by {height} pixels\"";
    }

    [GeneratedRegex("src=\"data:image/png;base64,([^\"]+)\"")]
    private static partial Regex Picture();

    [GeneratedRegex("<style>.*?</style>", RegexOptions.Singleline)]
    private static partial Regex Style();
}
