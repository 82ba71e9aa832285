using System.Text.Json;
using BenchPage.Engine;
using Microsoft.JSInterop;

namespace BenchPage.Tubes;

/// <summary>Asks the worker.</summary>
internal sealed class EngineLink(IJSObjectReference script)
{
    public async Task<StartAnswer> Start() =>
        JsonSerializer.Deserialize(
            await script.InvokeAsync<string>("ask", "Start"),
            MessageJson.Default.StartAnswer
        )!;

    public async Task<CutAnswer> Cut(Question question) =>
        JsonSerializer.Deserialize(await Ask("Cut", question), MessageJson.Default.CutAnswer)!;

    public async Task<PlanAnswer> Plan(Question question) =>
        JsonSerializer.Deserialize(await Ask("Plan", question), MessageJson.Default.PlanAnswer)!;

    public async Task<SheetAnswer> Sheet(Question question) =>
        JsonSerializer.Deserialize(await Ask("Sheet", question), MessageJson.Default.SheetAnswer)!;

    private ValueTask<string> Ask(string verb, Question question) =>
        script.InvokeAsync<string>(
            "ask",
            verb,
            JsonSerializer.Serialize(question, MessageJson.Default.Question)
        );
}
