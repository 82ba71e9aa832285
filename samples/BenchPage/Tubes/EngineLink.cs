using System.Globalization;
using System.Text.Json;
using BenchPage.Engine;
using Microsoft.JSInterop;

namespace BenchPage.Tubes;

/// <summary>Asks the worker.</summary>
public sealed class EngineLink(IJSObjectReference script)
{
    public async Task<StartAnswer> Start() =>
        JsonSerializer.Deserialize(
            await script.InvokeAsync<string>("ask", "Start"),
            MessageJson.Default.StartAnswer
        )!;

    public async Task<CutAnswer> Cut(Question question) =>
        JsonSerializer.Deserialize(await Ask("Cut", question), MessageJson.Default.CutAnswer)!;

    public async Task<CutAnswer> Try(Question question) =>
        JsonSerializer.Deserialize(await Ask("Try", question), MessageJson.Default.CutAnswer)!;

    public async Task<PlanAnswer> Plan(Question question) =>
        JsonSerializer.Deserialize(await Ask("Plan", question), MessageJson.Default.PlanAnswer)!;

    public async Task<SheetAnswer> Sheet(Question question) =>
        JsonSerializer.Deserialize(await Ask("Sheet", question), MessageJson.Default.SheetAnswer)!;

    public async Task<SheetAnswer> Template(BenchState state, int part) =>
        JsonSerializer.Deserialize(
            await script.InvokeAsync<string>(
                "ask",
                "Template",
                Written(new Question(state)),
                part.ToString(CultureInfo.InvariantCulture)
            ),
            MessageJson.Default.SheetAnswer
        )!;

    public async Task<PipeAnswer> Pipe(BenchState state, int number) =>
        JsonSerializer.Deserialize(
            await script.InvokeAsync<string>(
                "ask",
                "Pipe",
                Written(new Question(state)),
                number.ToString(CultureInfo.InvariantCulture)
            ),
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

    /// <summary>From the microphone; null if it was stopped. Where there is no sound the error is a key of <see cref="Words.PageWords.Microphone"/>.</summary>
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

    /// <summary>Stops what runs in the second worker.</summary>
    public ValueTask Stop() => script.InvokeVoidAsync("stopAll");

    public ValueTask Show(string html) =>
        script.InvokeVoidAsync("showSheet", html, Words.PageWords.Print, Words.PageWords.Close);

    private static string Written(Question question) =>
        JsonSerializer.Serialize(question, MessageJson.Default.Question);

    private ValueTask<string> Ask(string verb, Question question) =>
        script.InvokeAsync<string>("ask", verb, Written(question));
}
