using System.Text.Json.Nodes;

namespace BenchPage.Tubes;

/// <summary>How a member of a part is given.</summary>
public enum FieldKind
{
    /// <summary>A length with its unit.</summary>
    Size,

    /// <summary>Degrees.</summary>
    Angle,

    /// <summary>A pipe of the catalogue, or measured.</summary>
    Stock,

    /// <summary>A socket of the catalogue, measured, or none.</summary>
    Socket,

    /// <summary>The length of a pipe: a size, or open.</summary>
    PipeLength,

    /// <summary>One of a few words; the first if it is not there.</summary>
    Choice,
}

/// <summary>A member of a part.</summary>
public sealed record Field(string Key, FieldKind Kind, bool IsOptional = false)
{
    /// <summary>What can be chosen.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];
}

/// <summary>A kind of part: what it has, and what it begins with.</summary>
public sealed record PartKind(string Key, IReadOnlyList<Field> Fields)
{
    public static IReadOnlyList<PartKind> All { get; } =
    [
        new(
            "pipe",
            [
                new("stock", FieldKind.Stock),
                new("inside", FieldKind.Size, true),
                new("outside", FieldKind.Size),
                new("length", FieldKind.PipeLength),
            ]
        ),
        new(
            "coupling",
            [
                new("before", FieldKind.Socket),
                new("after", FieldKind.Socket),
                new("inside", FieldKind.Size),
                new("between", FieldKind.Size),
                new("gap", FieldKind.Size, true),
            ]
        ),
        new(
            "elbow",
            [
                new("before", FieldKind.Socket),
                new("after", FieldKind.Socket),
                new("inside", FieldKind.Size),
                new("radius", FieldKind.Size),
                new("angle", FieldKind.Angle),
                new("gap", FieldKind.Size, true),
            ]
        ),
        new(
            "bend",
            [
                new("radius", FieldKind.Size),
                new("angle", FieldKind.Angle),
                new("straightAfter", FieldKind.Size, true),
            ]
        ),
        new("bell", [new("inside", FieldKind.Size), new("length", FieldKind.Size)]),
        new(
            "insert",
            [
                new("inside", FieldKind.Size),
                new("outside", FieldKind.Size),
                new("inserted", FieldKind.Size),
                new("protrudes", FieldKind.Size, true),
            ]
        ),
        new("fitting", [new("adds", FieldKind.Size), new("inside", FieldKind.Size)]),
        new(
            "hole",
            [
                new("diameter", FieldKind.Size),
                new("at", FieldKind.Size),
                new("from", FieldKind.Choice) { Choices = ["end", "lips"] },
                new("drone", FieldKind.Choice) { Choices = ["closed", "open"] },
            ]
        ),
    ];

    // A new hole lies that far from the end of its pipe, and from the last hole: within reach of one hand.
    private const double FirstHole = 150;
    private const double NextHole = 30;

    /// <summary>Where a new hole lies beside those that a pipe has, measured from the same end.</summary>
    /// <param name="farthest">The farthest of them from that end, mm; null if there is none.</param>
    public static string HolePlace(double? farthest) =>
        Millimetres(farthest is { } last ? Math.Round(last + NextHole) : FirstHole);

    public static PartKind Of(string key) => All.First(kind => kind.Key == key);

    /// <summary>A part of this kind with usual sizes, to stand beside a pipe.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="stock">The pipe's name in the catalogue; null if it was measured.</param>
    /// <param name="inside">The pipe's inside diameter, mm.</param>
    public JsonObject New(string name, string? stock, double inside)
    {
        var part = new JsonObject { ["part"] = Key, ["name"] = name };
        var round = Math.Round(inside, 1);
        switch (Key)
        {
            case "pipe":
                if (stock is not null)
                {
                    part["stock"] = stock;
                }
                else
                {
                    part["inside"] = Millimetres(round);
                    part["outside"] = Millimetres(round + 6);
                }

                part["length"] = "150 mm";
                break;
            case "coupling":
            case "elbow":
                part["before"] = Socket(stock, round);
                part["after"] = Socket(stock, round);
                part["gap"] = "1 mm";
                part["inside"] = Millimetres(round);
                if (Key == "elbow")
                {
                    part["radius"] = Millimetres(round);
                    part["angle"] = 90;
                }
                else
                {
                    part["between"] = "3 mm";
                }

                break;
            case "bend":
                part["radius"] = Millimetres(Math.Round(4 * inside));
                part["angle"] = 90;
                part["straightAfter"] = "100 mm";
                break;
            case "bell":
                part["inside"] = Millimetres(Math.Round(1.3 * inside));
                part["length"] = "60 mm";
                break;
            case "insert":
                part["inside"] = Millimetres(Math.Min(30, Math.Round(0.75 * inside, 1)));
                part["outside"] = Millimetres(round);
                part["inserted"] = "25 mm";
                part["protrudes"] = "12 mm";
                break;
            case "hole":
                part["diameter"] = "9 mm";
                part["at"] = HolePlace(null);
                part["from"] = "end";
                break;
            default:
                part["adds"] = "25 mm";
                part["inside"] = Millimetres(Math.Min(30, round));
                break;
        }

        return part;
    }

    private static JsonNode Socket(string? stock, double inside) =>
        stock is not null
            ? JsonValue.Create(stock)
            : new JsonObject
            {
                ["entrance"] = Millimetres(inside + 6.5),
                ["bottom"] = Millimetres(inside + 6),
                ["depth"] = "28 mm",
            };

    private static string Millimetres(double value) => FormattableString.Invariant($"{value:0.##} mm");
}
