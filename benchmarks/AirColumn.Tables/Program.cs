using System.Globalization;
using AirColumn.Tables;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

// Computes the engine's tables anew, all or those named, and says how far each list is from the numbers in the source;
// with --write replaces those that are farther off than the error of the computation.
const string Write = "--write";
var repository = Repository();
var tables = AllTables.In(repository);
var unknown = args.Except(tables.Select(table => table.Name)).FirstOrDefault(name => name != Write);
if (unknown is not null)
{
    var names = string.Join(", ", tables.Select(table => table.Name).Distinct());
    await Console.Error.WriteLineAsync(
        $"There is no table '{unknown}'. Name any of {names}, or none for all."
    );
    return 1;
}

var named = args.Where(name => name != Write).ToHashSet();
foreach (var table in tables.Where(table => named.Count == 0 || named.Contains(table.Name)))
{
    var text = new TableText(repository, table.File);
    double[][] entries = [.. Enumerable.Range(0, table.Count).Select(table.Entry)];
    for (var list = 0; list < table.Lists.Length; list++)
    {
        double[] computed = [.. entries.Select(entry => entry[list])];
        var old = text.Read(table.Lists[list]);
        Console.WriteLine($"{table.Name}: {table.Lists[list]}, {Difference(computed, old)}");
        if (args.Contains(Write))
        {
            text.Write(table.Lists[list], computed, table.Format, table.Error);
        }
    }
}

return 0;

static string Difference(double[] computed, double[] old)
{
    if (computed.Length != old.Length)
    {
        return $"{computed.Length} numbers, of which the source has {old.Length}";
    }

    var place = Enumerable.Range(0, old.Length).MaxBy(i => Math.Abs(computed[i] - old[i]));
    return $"{old.Length} numbers, differs by at most {Math.Abs(computed[place] - old[place]):0.0e+0}: "
        + $"{computed[place]:G14} for {old[place]:G14}, number {place + 1}";
}

static string Repository()
{
    var folder = new DirectoryInfo(Environment.CurrentDirectory);
    while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "AirColumn.slnx")))
    {
        folder = folder.Parent;
    }

    return folder?.FullName
        ?? throw new InvalidOperationException(
            "Run this inside the repository: AirColumn.slnx was not found above the current folder."
        );
}
