using AirColumn.Documents;
using AirColumn.Workshop.Stock;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>Reads a tube from a parts file: JSON, each size a text with its unit.</summary>
/// <remarks>
/// <code>
/// { "tube": 1, "name": "…", "wall": "2.5 mm", "parts": [
///   { "part": "insert", "name": "…", "inside": "30 mm", "outside": "40 mm", "inserted": "25 mm", "protrudes": "10 mm" },
///   { "part": "pipe", "name": "…", "stock": "pvc-40 1-1/2", "inside": "40.6 mm", "length": "open" },
///   { "part": "coupling", "name": "…", "before": "pvc-40 1-1/2", "after": "pvc-40 2", "gap": "1 mm", "inside": "40 mm", "between": "12 mm" } ] }
/// </code>
/// A pipe has stock, or inside and outside; inside beside stock is a caliper reading and takes precedence over the table. The length of a
/// pipe is a size; the length of one pipe may be "open". The sockets of a coupling or elbow come from a catalogue, or are { "entrance",
/// "bottom", "depth" }. Further parts: elbow (also radius and angle in degrees, no between), bell (inside, length), bend (radius, angle,
/// straightAfter), fitting (adds, inside), hole (diameter, at, from lips or end, drone closed or open). Every part may have a name and a
/// price, in any currency.
/// </remarks>
public sealed class PartsFile
{
    private const string Open = "open";

    private static readonly string[] Kinds =
    [
        "pipe",
        "insert",
        "coupling",
        "elbow",
        "bell",
        "bend",
        "fitting",
        "hole",
    ];

    private PartsFile(string name, TubeAssembly assembly)
    {
        (Name, Assembly) = (name, assembly);
    }

    /// <summary>The name of the tube; empty if it has none.</summary>
    public string Name { get; }

    /// <summary>The tube.</summary>
    public TubeAssembly Assembly { get; }

    /// <summary>Reads a parts file.</summary>
    /// <param name="json">Its text, up to a million characters.</param>
    /// <param name="catalogue">The catalogue of stock and sockets.</param>
    /// <returns>The parts file.</returns>
    /// <exception cref="FormatException">The text is not a valid parts file; the message names the place, the allowed values and what to
    /// do.</exception>
    public static PartsFile Read(string json, Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(catalogue);
        return JsonFile.Read(json, "The parts file", "{ \"tube\": 1", file => Read(file, catalogue));
    }

    private static PartsFile Read(PartsObject file, Catalogue catalogue)
    {
        if (!file.Has("tube"))
        {
            throw new FormatException("tube is missing; write \"tube\": 1, the version of the format.");
        }

        if (file.Number("tube") is not 1)
        {
            throw file.Wrong("tube", "it must be 1, the version of this format");
        }

        var parts = file.Objects("parts").Select((part, i) => Part(part, i, catalogue)).ToList();
        var (name, wall) = (file.TextIfAny("name") ?? "", file.SizeIfAny("wall"));
        file.Done();
        try
        {
            return new PartsFile(name, new TubeAssembly(parts, wall));
        }
        catch (ArgumentException problem)
        {
            throw new FormatException(PartsObject.Plain(problem), problem);
        }
    }

    private static TubePart Part(PartsObject part, int index, Catalogue catalogue)
    {
        var kind = part.Text("part");
        var name = part.TextIfAny("name") ?? $"{kind} {index + 1}";
        var price = part.NumberIfAny("price");
        TubePart made = part.Make(() =>
            (
                kind switch
                {
                    "pipe" => Pipe(part, name, catalogue),
                    "insert" => new InsertPart(
                        name,
                        part.Size("inside"),
                        part.Size("outside"),
                        part.Size("inserted"),
                        part.SizeIfAny("protrudes") ?? Length.Zero
                    ),
                    "coupling" => Coupling(part, name, catalogue),
                    "elbow" => Elbow(part, name, catalogue),
                    "bell" => new BellPart(name, part.Size("inside"), part.Size("length")),
                    "bend" => new BendPart(
                        name,
                        part.Size("radius"),
                        Angle.FromDegrees(part.Number("angle")),
                        part.SizeIfAny("straightAfter") ?? Length.Zero
                    ),
                    "hole" => new HolePart(
                        name,
                        part.Size("diameter"),
                        part.Size("at"),
                        part.Choice("from", "end", "lips") == "lips" ? PipeEnd.Lips : PipeEnd.Open
                    )
                    {
                        IsOpenInDrone = part.Choice("drone", "closed", "open") == "open",
                    },
                    "fitting" => (TubePart)new AddedPart(name, part.Size("adds"), part.Size("inside")),
                    _ => throw part.Wrong(
                        "part",
                        $"'{Quote.Cut(kind)}' is not known; "
                            + (
                                Nearest.IfNear(kind, Kinds) is { } meant
                                    ? $"did you mean \"{meant}\"?"
                                    : $"write {string.Join(", ", Kinds[..^1])} or {Kinds[^1]}"
                            )
                    ),
                }
            ) with
            {
                Price = price,
            }
        );
        part.Done();
        return made;
    }

    private static PipePart Pipe(PartsObject part, string name, Catalogue catalogue)
    {
        var length = part.Text("length");
        if (length != Open && Nearest.IfNear(length, [Open]) is not null)
        {
            throw part.Wrong("length", $"'{Quote.Cut(length)}' is not known; did you mean \"{Open}\"?");
        }

        Length? cut = length == Open ? null : part.Size("length");
        return part.TextIfAny("stock") is { } stock
            ? PipePart.Of(name, catalogue.Pipe(stock), part.SizeIfAny("inside"), cut)
            : new PipePart(name, part.Size("inside"), part.Size("outside"), cut);
    }

    private static JoinPart Coupling(PartsObject part, string name, Catalogue catalogue)
    {
        var gap = part.SizeIfAny("gap") ?? Length.Zero;
        return JoinPart.Straight(
            name,
            Socket(part, "before", gap, catalogue),
            Socket(part, "after", gap, catalogue),
            part.Size("inside"),
            part.Size("between")
        );
    }

    private static JoinPart Elbow(PartsObject part, string name, Catalogue catalogue)
    {
        var gap = part.SizeIfAny("gap") ?? Length.Zero;
        return JoinPart.Elbow(
            name,
            Socket(part, "before", gap, catalogue)
                ?? throw part.Wrong("before", "an elbow needs both sockets"),
            Socket(part, "after", gap, catalogue) ?? throw part.Wrong("after", "an elbow needs both sockets"),
            part.Size("inside"),
            part.Size("radius"),
            Angle.FromDegrees(part.Number("angle"))
        );
    }

    private static FittingSocket? Socket(PartsObject part, string key, Length gap, Catalogue catalogue)
    {
        if (part.ObjectIfAny(key) is { } measured)
        {
            var socket = measured.Make(() =>
                new FittingSocket(
                    measured.Size("entrance"),
                    measured.SizeIfAny("bottom") ?? measured.Size("entrance"),
                    measured.Size("depth"),
                    gap
                )
            );
            measured.Done();
            return socket;
        }

        return part.TextIfAny(key) is { } name ? FittingSocket.Of(catalogue.Socket(name), gap) : null;
    }

    /// <summary>Name and parts.</summary>
    /// <returns>Name and parts, as text.</returns>
    public override string ToString() => Name.Length == 0 ? Assembly.ToString() : $"{Name}: {Assembly}";
}
