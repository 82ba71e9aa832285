using System.Globalization;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;

namespace BenchPage.Engine;

/// <summary>What the script of the worker calls: everything that computes runs there, so that the page never waits for it.</summary>
[SupportedOSPlatform("browser")]
internal static partial class Worker
{
    private static readonly Workbench Bench = new();
    private static byte[] sound = [];

    [JSExport]
    internal static string Start() =>
        JsonSerializer.Serialize(Workbench.Start(), MessageJson.Default.StartAnswer);

    [JSExport]
    internal static string Check(string parts) => Workbench.Check(parts);

    [JSExport]
    internal static string Cut(string question) =>
        JsonSerializer.Serialize(Bench.Cut(Read(question)), MessageJson.Default.CutAnswer);

    [JSExport]
    internal static string Try(string question) =>
        JsonSerializer.Serialize(Bench.Try(Read(question)), MessageJson.Default.CutAnswer);

    [JSExport]
    internal static string Plan(string question) =>
        JsonSerializer.Serialize(Bench.Plan(Read(question)), MessageJson.Default.PlanAnswer);

    [JSExport]
    internal static string Chart(string question) => Bench.Chart(Read(question));

    [JSExport]
    internal static string Sheet(string question) =>
        JsonSerializer.Serialize(Bench.Sheet(Read(question)), MessageJson.Default.SheetAnswer);

    [JSExport]
    internal static string Pipe(string question, string number) =>
        JsonSerializer.Serialize(
            Flutes.Pipe(Read(question).State, int.Parse(number, CultureInfo.InvariantCulture)),
            MessageJson.Default.PipeAnswer
        );

    [JSExport]
    internal static string Flute(string question) =>
        JsonSerializer.Serialize(Flutes.Flute(Read(question).State), MessageJson.Default.FluteAnswer);

    [JSExport]
    internal static string Template(string question, string part) =>
        JsonSerializer.Serialize(
            Workbench.Template(Read(question), int.Parse(part, CultureInfo.InvariantCulture)),
            MessageJson.Default.SheetAnswer
        );

    [JSExport]
    internal static string Listen(string question, byte[] sound) =>
        JsonSerializer.Serialize(
            Listening.Recording(Read(question).State, sound, new Reports()),
            MessageJson.Default.ListenAnswer
        );

    [JSExport]
    internal static string Heard(string question, string reading) =>
        JsonSerializer.Serialize(
            Listening.Typed(Read(question).State, reading),
            MessageJson.Default.ListenAnswer
        );

    /// <summary>Renders a tube; its sound is fetched with <see cref="Sound"/>.</summary>
    [JSExport]
    internal static string Preview(string question)
    {
        (var answer, sound) = Previewing.Of(Read(question).State);
        return JsonSerializer.Serialize(answer, MessageJson.Default.PreviewAnswer);
    }

    [JSExport]
    internal static byte[] Sound() => sound;

    /// <summary>Tells the page how far something is that takes seconds, 0 to 1.</summary>
    [JSImport("globalThis.reportProgress")]
    internal static partial void Report(double share);

    private static Question Read(string question) =>
        JsonSerializer.Deserialize(question, MessageJson.Default.Question)!;

    // A hundred reports are enough for a bar.
    private sealed class Reports : IProgress<double>
    {
        private double last;

        public void Report(double value)
        {
            if (value >= last + 0.01)
            {
                last = value;
                Worker.Report(value);
            }
        }
    }
}
