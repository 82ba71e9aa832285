using System.Globalization;
using AirColumn.Accuracy;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

// Writes docs/accuracy.md and its plots into the repository, or elsewhere if a folder is given.
var root = args.Length > 0 ? args[0] : Path.Combine(Repository(), "docs");
IReadOnlyList<Chapter> chapters =
[
    FieldChapter.Make(),
    ModeChapter.Make(),
    SectionChapter.Make(),
    EndChapter.Make(),
    JunctionChapter.Make(),
    AirChapter.Make(),
    EnergyChapter.Make(),
    RecordingChapter.Make(),
    MeasuredChapter.Make(),
    BoreFitChapter.Make(),
];
var plots = Path.Combine(root, "accuracy");
Directory.CreateDirectory(plots);
foreach (var plot in chapters.SelectMany(chapter => chapter.Plots))
{
    await File.WriteAllTextAsync(Path.Combine(plots, plot.File), plot.Svg());
}

var page = Path.Combine(root, "accuracy.md");
await File.WriteAllTextAsync(page, Report.Markdown(chapters));
Console.WriteLine($"Wrote {page} and {chapters.Sum(chapter => chapter.Plots.Count)} plots beside it.");

static string Repository()
{
    var folder = new DirectoryInfo(Environment.CurrentDirectory);
    while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "AirColumn.slnx")))
    {
        folder = folder.Parent;
    }

    return folder?.FullName
        ?? throw new InvalidOperationException(
            "Run this inside the repository, or give the folder to write into: AirColumn.slnx was not found above here."
        );
}
