using nietras.SeparatedValues;

namespace AirColumn.Workshop.Stock;

/// <summary>Pipes and sockets by name, from public standards and from files of your own. Immutable.</summary>
/// <remarks>
/// A user's catalogue is a CSV file with a header line, columns in any order, separated by commas, text with commas in quotes. Pipes:
/// series, size, material, outside, outside_tolerance, wall_min, wall_max, inside, unit (mm or in), standard, edition, source, certainty (read,
/// inferred, memory or own). Sockets: series, size, entrance, bottom, depth, unit, standard, edition, source, certainty. Empty cells are
/// allowed in outside_tolerance, wall_min, wall_max and inside only, and a pipe needs wall_min or inside. Sockets may have a column
/// diameter_tolerance, with empty cells: the tolerance of the diameters at entrance and bottom.
/// </remarks>
public sealed class Catalogue
{
    private const int Longest = 1_000_000;

    private static readonly string[] PipeColumns =
    [
        "series",
        "size",
        "material",
        "outside",
        "outside_tolerance",
        "wall_min",
        "wall_max",
        "inside",
        "unit",
        "standard",
        "edition",
        "source",
        "certainty",
    ];

    private static readonly string[] SocketColumns =
    [
        "series",
        "size",
        "entrance",
        "bottom",
        "depth",
        "unit",
        "standard",
        "edition",
        "source",
        "certainty",
    ];

    // A column that may be missing.
    private static readonly string[] SocketExtras = ["diameter_tolerance"];

    private Catalogue(IReadOnlyList<StockPipe> pipes, IReadOnlyList<StockSocket> sockets)
    {
        (Pipes, Sockets) = (pipes, sockets);
    }

    /// <summary>The catalogue that comes with this package: pipes and sockets of public standards, each row with its source.</summary>
    public static Catalogue Standard { get; } =
        new(ReadPipes(Resource("pipes.csv")), ReadSockets(Resource("sockets.csv")));

    /// <summary>The pipes.</summary>
    public IReadOnlyList<StockPipe> Pipes { get; }

    /// <summary>The sockets.</summary>
    public IReadOnlyList<StockSocket> Sockets { get; }

    /// <summary>This catalogue with the pipes of a CSV file, which replace pipes of the same name.</summary>
    /// <param name="csv">The text of the file, up to a million characters; see the remarks of this class.</param>
    /// <returns>The larger catalogue.</returns>
    /// <exception cref="FormatException">A row or column is not valid; the message names both.</exception>
    public Catalogue WithPipes(string csv)
    {
        ArgumentNullException.ThrowIfNull(csv);
        var own = ReadPipes(csv);
        return new Catalogue(
            [.. own, .. Pipes.Where(pipe => !own.Exists(other => other.Name == pipe.Name))],
            Sockets
        );
    }

    /// <summary>This catalogue with the sockets of a CSV file, which replace sockets of the same name.</summary>
    /// <param name="csv">The text of the file, up to a million characters; see the remarks of this class.</param>
    /// <returns>The larger catalogue.</returns>
    /// <exception cref="FormatException">A row or column is not valid; the message names both.</exception>
    public Catalogue WithSockets(string csv)
    {
        ArgumentNullException.ThrowIfNull(csv);
        var own = ReadSockets(csv);
        return new Catalogue(
            Pipes,
            [.. own, .. Sockets.Where(socket => !own.Exists(other => other.Name == socket.Name))]
        );
    }

    /// <summary>A pipe by series and size, such as "pvc-40 1-1/2".</summary>
    /// <param name="name">The name.</param>
    /// <returns>The pipe.</returns>
    /// <exception cref="ArgumentException">There is no pipe of that name; the message lists the names in its series, or the series.</exception>
    public StockPipe Pipe(string name) =>
        name is null
            ? throw new ArgumentNullException(nameof(name))
            : Pipes.FirstOrDefault(pipe => pipe.Name == name)
                ?? throw Unknown(name, "pipe", Pipes.Select(pipe => (pipe.Series, pipe.Size)));

    /// <summary>A socket by the series and size of its pipe.</summary>
    /// <param name="name">The name.</param>
    /// <returns>The socket.</returns>
    /// <exception cref="ArgumentException">There is no socket of that name; the message lists the names in its series, or the series.</exception>
    public StockSocket Socket(string name) =>
        name is null
            ? throw new ArgumentNullException(nameof(name))
            : Sockets.FirstOrDefault(socket => socket.Name == name)
                ?? throw Unknown(name, "socket", Sockets.Select(socket => (socket.Series, socket.Size)));

    private static ArgumentException Unknown(
        string name,
        string what,
        IEnumerable<(string Series, string Size)> known
    )
    {
        var series = known.ToLookup(item => item.Series, item => item.Size);
        var wanted = name.Split(' ')[0];
        return new ArgumentException(
            series.Contains(wanted)
                ? $"There is no {what} '{name}'; the sizes of {wanted} are {string.Join(", ", series[wanted])}."
                : $"There is no {what} '{name}'; write series and size, such as \"{series.First().Key} {series.First().First()}\". The series are {string.Join(", ", series.Select(group => group.Key))}.",
            nameof(name)
        );
    }

    private static List<StockPipe> ReadPipes(string csv) =>
        Rows(
            csv,
            PipeColumns,
            [],
            row =>
                new StockPipe
                {
                    Series = row.Text("series"),
                    Size = row.Text("size"),
                    Material = row.Text("material"),
                    Outside = row.Size("outside"),
                    OutsideTolerance = row.SizeIfAny("outside_tolerance"),
                    WallLeast = row.SizeIfAny("wall_min"),
                    WallMost = row.SizeIfAny("wall_max"),
                    InsideGiven = row.SizeIfAny("inside"),
                    Standard = row.Text("standard"),
                    Edition = row.Text("edition"),
                    Source = row.Text("source"),
                    Certainty = row.Certainty(),
                }.Checked(row)
        );

    private static List<StockSocket> ReadSockets(string csv) =>
        Rows(
            csv,
            SocketColumns,
            SocketExtras,
            row =>
                new StockSocket
                {
                    Series = row.Text("series"),
                    Size = row.Text("size"),
                    Entrance = row.Size("entrance"),
                    Bottom = row.Size("bottom"),
                    Depth = row.Size("depth"),
                    DiameterTolerance = row.SizeIfAny("diameter_tolerance"),
                    Standard = row.Text("standard"),
                    Edition = row.Text("edition"),
                    Source = row.Text("source"),
                    Certainty = row.Certainty(),
                }.Checked(row)
        );

    private static List<T> Rows<T>(string csv, string[] columns, string[] extras, Func<CatalogueRow, T> read)
    {
        if (csv.Length > Longest)
        {
            throw new FormatException(
                $"The catalogue has {csv.Length} characters; at most {Longest} are allowed."
            );
        }

        var result = new List<T>();
        var names = new HashSet<string>();
        try
        {
            using var reader = Sep.New(',').Reader(options => options with { Unescape = true }).FromText(csv);
            foreach (var column in columns)
            {
                if (!reader.Header.TryIndexOf(column, out _))
                {
                    throw new FormatException(
                        $"The catalogue has no column '{column}'; its columns must be {string.Join(", ", columns)}."
                    );
                }
            }

            foreach (var name in reader.Header.ColNames)
            {
                if (!columns.Contains(name) && !extras.Contains(name))
                {
                    throw new FormatException(
                        $"The catalogue has a column '{name}'; the known columns are {string.Join(", ", columns.Concat(extras))}."
                    );
                }
            }

            foreach (var row in reader)
            {
                var cells = new Dictionary<string, string>();
                foreach (var column in columns)
                {
                    cells[column] = row[column].ToString().Trim();
                }

                foreach (var extra in extras)
                {
                    cells[extra] = reader.Header.TryIndexOf(extra, out var index)
                        ? row[index].ToString().Trim()
                        : "";
                }

                var made = new CatalogueRow(row.LineNumberFrom, cells);
                if (!names.Add($"{made.Text("series")} {made.Text("size")}"))
                {
                    throw made.Wrong("size", "an earlier row has this series and size; give each once");
                }

                result.Add(read(made));
            }
        }
        catch (Exception problem) when (problem is InvalidDataException or ArgumentException)
        {
            throw new FormatException($"The catalogue is not valid CSV: {problem.Message}", problem);
        }

        return result;
    }

    private static string Resource(string name)
    {
        using var stream = typeof(Catalogue).Assembly.GetManifestResourceStream(
            $"AirColumn.Workshop.Stock.{name}"
        )!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Numbers of pipes and sockets.</summary>
    /// <returns>Numbers of pipes and sockets, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Pipes.Count} pipes, {Sockets.Count} sockets");
}
