using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;

namespace BenchPage.Engine;

/// <summary>What the script of the worker calls: everything that computes runs there, so that the page never waits for it.</summary>
[SupportedOSPlatform("browser")]
internal static partial class Worker
{
    private static readonly Workbench Bench = new();

    [JSExport]
    internal static string Start() =>
        JsonSerializer.Serialize(Workbench.Start(), MessageJson.Default.StartAnswer);

    [JSExport]
    internal static string Cut(string question) =>
        JsonSerializer.Serialize(Bench.Cut(Read(question)), MessageJson.Default.CutAnswer);

    [JSExport]
    internal static string Plan(string question) =>
        JsonSerializer.Serialize(Bench.Plan(Read(question)), MessageJson.Default.PlanAnswer);

    [JSExport]
    internal static string Sheet(string question) =>
        JsonSerializer.Serialize(Bench.Sheet(Read(question)), MessageJson.Default.SheetAnswer);

    private static Question Read(string question) =>
        JsonSerializer.Deserialize(question, MessageJson.Default.Question)!;
}
