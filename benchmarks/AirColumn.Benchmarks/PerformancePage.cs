using System.Globalization;
using System.Text;
using BenchmarkDotNet.Reports;

namespace AirColumn.Benchmarks;

/// <summary>docs/performance.md from one run of all benchmarks.</summary>
internal static class PerformancePage
{
    private const int PlainShare = 64; // the plain version is timed at every 64th frequency

    public static void Write(Summary summary)
    {
        var medians = summary
            .Reports.Where(report => report.ResultStatistics is not null)
            .ToDictionary(
                report =>
                    (
                        report.BenchmarkCase.Descriptor.WorkloadMethod.Name,
                        report.BenchmarkCase.Parameters.Count > 0
                            ? report.BenchmarkCase.Parameters[0].Value as int?
                            : null
                    ),
                report => report
            );
        var host = summary.HostEnvironmentInfo;
        var text = new StringBuilder();
        Line(text, "# How fast it is");
        Line(text);
        Line(
            text,
            "Written by `dotnet run -c Release --project benchmarks/AirColumn.Benchmarks`, which times everything below in one run. Medians; "
                + "one core unless said otherwise. Times are from one machine on one day; the ratios matter more."
        );
        Line(text);
        Line(
            text,
            $"{DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}, {host.Cpu.Value?.ProcessorName}, "
                + $"{Environment.ProcessorCount} cores, .NET {Environment.Version}, vectors of {Widest()} bits."
        );
        Line(text);
        Line(text, "## A curve of 4096 impedances");
        Line(text);
        Line(
            text,
            "Cones in a row, 30 to 60 mm over 1.3 m, rim of 3 mm, full losses that vary along each cone, 20 Hz to 2 kHz. *Plain* is a textbook "
                + "program in complex numbers, with a cylinder of the mean radius for each cone and a closed end. It is timed at every 64th frequency, and that time is scaled up to all 4096. "
                + "*First* is a new column and its curve: the state at the blown end at some eighty frequencies, a series through it, and 4096 values of that. *Again* is the "
                + "same curve asked for again. *Change* is `Column.WithBore` with one joint wider, and its curve. *Narrow* is the curve of a "
                + "column with a twentieth of the radii, asked for again. *Gradient* is a new column, its first curve and the derivative of each of the 4096 impedances with every "
                + "dimension and with temperature, humidity, pressure and carbon dioxide: three numbers a section and five more. The next column is the time of *gradient* "
                + "over that of *first*."
        );
        Line(text);
        Line(
            text,
            "| sections | plain, ms | first, µs | plain over first | again, µs | narrow, µs | in quantities, over again | change, µs | gradient, ms | over first | again allocates |"
        );
        Line(text, "|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var sections in new[] { 1, 10, 50, 200 })
        {
            var plain = PlainShare * Of("Plain", sections);
            var (first, again) = (Of("FirstCurve", sections), Of("Again", sections));
            Line(
                text,
                $"| {sections} | {Show(plain / 1e6)} | {Show(first / 1e3)} | {Show(plain / first)} | {Show(again / 1e3)} | "
                    + $"{Show(Of("NarrowBore", sections) / 1e3)} | {Show(Of("Quantities", sections) / again)} | "
                    + $"{Show(Of("ChangeAndCurve", sections) / 1e3)} | {Show(Of("Gradient", sections) / 1e6)} | "
                    + $"{Show(Of("Gradient", sections) / first)} | "
                    + $"{medians[("Again", sections)].GcStats.GetBytesAllocatedPerOperation(medians[("Again", sections)].BenchmarkCase)} B |"
            );
        }

        Line(text);
        Line(text, "## Resonances, lengths, single frequencies");
        Line(text);
        Line(text, "| what | time | over a curve of 4096 | allocates |");
        Line(text, "|---|--:|--:|--:|");
        var curve = Of("Impedances", null);
        foreach (
            var (name, what) in new[]
            {
                ("TenResonances", "first ten resonances of ten cones, from the bore on"),
                ("TenGradients", "their gradients with 35 dimensions and quantities of the air"),
                ("LengthForANote", "length of a stepped tube for a note"),
                ("OneFrequency", "one impedance, asked for near there before"),
                ("OneFrequencyFirst", "one impedance of a new column"),
            }
        )
        {
            Line(
                text,
                $"| {what} | {Time(Of(name, null))} | {Show(Of(name, null) / curve)} | {Bytes(name)} |"
            );
        }

        Line(text);
        Line(text, "## Tone holes");
        Line(text);
        Line(
            text,
            "A cylinder of 15 mm with open holes in a row, a new column each time: the first curve of 4096 impedances, and the first five resonances. *Heard* is with "
                + "mutual radiation, the default; *unheard* is each hole by itself."
        );
        Line(text);
        Line(
            text,
            "| holes | curve unheard, µs | heard, µs | ratio | resonances unheard, µs | heard, µs | ratio |"
        );
        Line(text, "|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var holes in new[] { 6, 16, 40 })
        {
            var (curveAlone, curveHeard) = (Of("UnheardCurve", holes), Of("HeardCurve", holes));
            var (alone, heard) = (Of("UnheardResonances", holes), Of("HeardResonances", holes));
            Line(
                text,
                $"| {holes} | {Show(curveAlone / 1e3)} | {Show(curveHeard / 1e3)} | {Show(curveHeard / curveAlone)} | "
                    + $"{Show(alone / 1e3)} | {Show(heard / 1e3)} | {Show(heard / alone)} |"
            );
        }

        Line(text);
        Line(text, "## Radial modes");
        Line(text);
        Line(
            text,
            "Four modes (`Wavefronts.Multimodal`) against plane waves for the same bore, 4096 frequencies, 20 Hz to 2 kHz, full losses. "
                + "*Modes* is a curve once its series are made. *New bore* is a bore that shares nothing except the field of its mouth, with its first curve or its first "
                + "eight resonances. *One by one* is the time for one frequency without series, with eight frequencies computed side by side. *Default* is the first eight resonances of a column that "
                + "shares nothing, with automatic fronts: the kind of fronts, the number of modes and the field of the mouth are found first. *Curved* is the same with curved fronts."
        );
        Line(text);
        Line(
            text,
            "| bore | plane, µs | modes, µs | modes over plane | new bore and curve, ms | new bore and resonances, ms | one by one, µs | default, ms | curved, ms |"
        );
        Line(text, "|---|--:|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var (tube, what) in new[] { (1, "flared end"), (2, "bell"), (3, "cone") })
        {
            Line(
                text,
                $"| {what} | {Show(Of("Plane", tube) / 1e3)} | {Show(Of("Modes", tube) / 1e3)} | "
                    + $"{Show(Of("Modes", tube) / Of("Plane", tube))} | {Show(Of("NewBore", tube) / 1e6)} | "
                    + $"{Show(Of("NewResonances", tube) / 1e6)} | {Show(Of("EightFrequencies", tube) / 8e3)} | "
                    + $"{Show(Of("Automatic", tube) / 1e6)} | {Show(Of("Curved", tube) / 1e6)} |"
            );
        }

        Line(text);
        Line(text, "## Design");
        Line(text);
        var design = DesignBenchmarks.TenStarts();
        Line(
            text,
            $"A flared tube for drone and octave, with four unknowns, all of ten random starts searched to the end: {design.Starts.Count(start => start.LargestError < 0.1)} of "
                + $"{design.Starts.Count} within 0.1 cent, {design.Evaluations} columns, {Time(Of("Shapes", null))}, "
                + $"{Show(Of("Shapes", null) / Of("TwoResonances", null) / design.Evaluations)} times the two resonances of these columns alone. The budget of two "
                + $"resonances with six tolerances, both ends of each tolerance tried: {Time(Of("Budgets", null))}."
        );
        Line(text);
        Line(text, "## Batches and documents");
        Line(text);
        Line(
            text,
            $"Eight resonances of 200 bores of ten cones: {Time(Of("OneByOne", null))} one by one, {Time(Of("AllCores", null))} with `Batch` on "
                + $"{Environment.ProcessorCount} cores, {Show(Of("OneByOne", null) / Of("AllCores", null))} times as fast. A document of ten cones is "
                + $"read to a column in {Time(Of("Document", null))}."
        );
        using var tool = new PublishedTool(Folder());
        var (asBuilt, ahead) = StartUp.Milliseconds(tool);
        Line(text);
        Line(text, "## Start-up");
        Line(text);
        Line(
            text,
            $"`ColumnTool resonances` computes eight resonances of a stepped tube. From the start of the process to its end it takes {Milliseconds(asBuilt)} as built, "
                + $"compiled when it runs, and {Milliseconds(ahead)} compiled ahead of time by the command in [DEVELOPERS.md](../DEVELOPERS.md) (medians of 21)."
        );
        Line(text);
        Line(text, "## Many questions to one process");
        Line(text);
        Line(
            text,
            tool.Ahead is { } program
                ? ManyQuestions.Told(program)
                : "ColumnTool could not be compiled ahead here."
        );
        File.WriteAllText(Path.Combine(Folder(), "docs", "performance.md"), text.ToString());

        double Of(string name, int? sections) => medians[(name, sections)].ResultStatistics!.Median;

        string Bytes(string name) =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{medians[(name, null)].GcStats.GetBytesAllocatedPerOperation(medians[(name, null)].BenchmarkCase) / 1024.0:F1} KB"
            );
    }

    private static int Widest() => 64 * System.Numerics.Vector<double>.Count;

    private static string Time(double nanoseconds) =>
        nanoseconds switch
        {
            < 1e3 => $"{Show(nanoseconds)} ns",
            < 1e6 => $"{Show(nanoseconds / 1e3)} µs",
            _ => $"{Show(nanoseconds / 1e6)} ms",
        };

    private static string Milliseconds(double? value) =>
        value is { } milliseconds ? $"{Show(milliseconds)} ms" : "(could not be published here)";

    // Three digits.
    private static string Show(double value) =>
        value.ToString(
            value switch
            {
                >= 100 => "F0",
                >= 10 => "F1",
                >= 1 => "F2",
                _ => "G2",
            },
            CultureInfo.InvariantCulture
        );

    private static void Line(StringBuilder text, string line = "") => text.Append(line).Append('\n');

    /// <summary>The folder of the repository.</summary>
    public static string Folder()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "AirColumn.slnx")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }
}
