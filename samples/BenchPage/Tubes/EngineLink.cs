using System.Globalization;
using System.Text.Json;
using BenchPage.Engine;
using Microsoft.JSInterop;

namespace BenchPage.Tubes;

/// <summary>Asks the worker. What was stopped ends with an <see cref="OperationCanceledException"/>, unless it says null.</summary>
public sealed class EngineLink(IJSObjectReference script)
{
    /// <summary>How far the work in the second worker is, 0 to 1.</summary>
    public event Action<double>? Progress;

    /// <summary>A bench whose link was opened in the open page.</summary>
    public event Func<string, Task>? Linked;

    public async Task<StartAnswer> Start()
    {
        await script.InvokeVoidAsync("watch", DotNetObjectReference.Create(this));
        return JsonSerializer.Deserialize(await Asked("Start"), MessageJson.Default.StartAnswer)!;
    }

    [JSInvokable]
    public void Progressed(double share) => Progress?.Invoke(share);

    [JSInvokable]
    public Task OpenLink(string bench) => Linked?.Invoke(bench) ?? Task.CompletedTask;

    /// <summary>What is wrong with a parts file; empty if it can be read.</summary>
    public Task<string> Check(string parts) => Asked("Check", parts);

    public async Task<CutAnswer> Cut(Question question) =>
        JsonSerializer.Deserialize(await Asked("Cut", Written(question)), MessageJson.Default.CutAnswer)!;

    public async Task<CutAnswer> Try(Question question) =>
        JsonSerializer.Deserialize(await Asked("Try", Written(question)), MessageJson.Default.CutAnswer)!;

    public async Task<PlanAnswer> Plan(Question question) =>
        JsonSerializer.Deserialize(await Asked("Plan", Written(question)), MessageJson.Default.PlanAnswer)!;

    /// <summary>The impedance chart, SVG.</summary>
    public Task<string> Chart(Question question) => Asked("Chart", Written(question));

    public async Task<SheetAnswer> Sheet(Question question) =>
        JsonSerializer.Deserialize(await Asked("Sheet", Written(question)), MessageJson.Default.SheetAnswer)!;

    public async Task<SheetAnswer> Template(BenchState state, int part) =>
        JsonSerializer.Deserialize(
            await Asked(
                "Template",
                Written(new Question(state)),
                part.ToString(CultureInfo.InvariantCulture)
            ),
            MessageJson.Default.SheetAnswer
        )!;

    public async Task<PipeAnswer> Pipe(BenchState state, int number) =>
        JsonSerializer.Deserialize(
            await Asked("Pipe", Written(new Question(state)), number.ToString(CultureInfo.InvariantCulture)),
            MessageJson.Default.PipeAnswer
        )!;

    /// <summary>A flute; null if the search was stopped.</summary>
    public async Task<FluteAnswer?> Flute(BenchState state) =>
        await script.InvokeAsync<string?>("work", "Flute", Written(new Question(state))) is { } answer
            ? JsonSerializer.Deserialize(answer, MessageJson.Default.FluteAnswer)
            : null;

    /// <summary>From what a tuner shows; null if it was stopped.</summary>
    public Task<ListenAnswer?> Heard(BenchState state, string reading) =>
        Listened("work", "Heard", Written(new Question(state)), reading);

    /// <summary>From a WAV file that is chosen now; null if none was, or it was stopped.</summary>
    public Task<ListenAnswer?> ListenToFile(BenchState state) =>
        Listened("listenToFile", Written(new Question(state)));

    /// <summary>
    /// From the microphone; null if it was stopped. Where there is no sound the error is a key of <see cref="Words.PageWords.Microphone"/>.
    /// </summary>
    public Task<ListenAnswer?> ListenToMicrophone(BenchState state, double seconds) =>
        Listened("listenToMicrophone", Written(new Question(state)), seconds);

    /// <summary>Renders a tube; null if it was stopped.</summary>
    public async Task<PreviewAnswer?> Preview(BenchState state) =>
        await script.InvokeAsync<string?>("preview", Written(new Question(state))) is { } answer
            ? JsonSerializer.Deserialize(answer, MessageJson.Default.PreviewAnswer)
            : null;

    public ValueTask StopPreviews() => script.InvokeVoidAsync("stopPreviews");

    public ValueTask ForgetSound(string address) => script.InvokeVoidAsync("forgetSound", address);

    private async Task<ListenAnswer?> Listened(string function, params object[] arguments) =>
        await script.InvokeAsync<string?>(function, arguments) is { } answer
            ? JsonSerializer.Deserialize(answer, MessageJson.Default.ListenAnswer)
            : null;

    /// <summary>Stops what the first worker computes; the next question begins a new one.</summary>
    public ValueTask StopAsking() => script.InvokeVoidAsync("stopAsking");

    /// <summary>Stops what runs in the second worker.</summary>
    public ValueTask Stop() => script.InvokeVoidAsync("stopAll");

    public ValueTask Show(string html) =>
        script.InvokeVoidAsync("showSheet", html, Words.PageWords.Print, Words.PageWords.Close);

    private static string Written(Question question) =>
        JsonSerializer.Serialize(question, MessageJson.Default.Question);

    // All that these ask for waits in one worker.
    private async Task<string> Asked(params object[] question) =>
        await script.InvokeAsync<string?>("ask", question) ?? throw new OperationCanceledException();
}
