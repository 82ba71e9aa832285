using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>The questions on the way to a parts file, in English.</summary>
internal static class QuestionWords
{
    public const string Name = "What do you call the tube?";
    public const string UsualName = "My tube";
    public const string Mouthpiece = "mouthpiece";
    public const string MainPipe = "main pipe";

    public const string Pipe =
        "Which pipe? A name of the catalogue, such as pvc-40 1-1/2 ('DroneTube stock' lists them), or 'measured'";

    public const string PipeInside = "How wide is the pipe inside, by caliper? Such as 40.6 mm or 1⅝ in";
    public const string PipeOutside = "How wide is the pipe outside?";
    public const string PipeLength = "How long is this pipe sawn?";
    public const string NotMeasured = "not measured";

    public const string Mouth =
        "What do the lips play on: an 'insert' pushed into the pipe, a 'fitting' put over it, or 'none', the pipe itself?";

    public const string Next = "What comes next toward the open end, or does the tube 'end'?";
    public const string Angle = "By how many degrees does the elbow turn?";
    public const string Entrance = "How wide is the socket inside, at its entrance?";
    public const string Depth = "How deep is the socket, from its entrance to its stop?";
    public const string BellLength = "How long is the end of the pipe that is heated and flared?";
    public const string BellInside = "How wide is the bell inside, at its end?";
    public const string NeedsAnswer = "This question has no usual answer; write one.";

    public static string PipeCaliper(Length table) =>
        $"How wide is it inside, by caliper? The table says {Wording.Size(table)}; a caliper is surer";

    public static string MouthSize(string kind, string key) =>
        key switch
        {
            "inside" => "How wide is the mouthpiece inside?",
            "outside" => "How wide outside is the end that goes into the pipe?",
            "inserted" => "How far is the mouthpiece pushed in?",
            "protrudes" => "How far does it stand out?",
            "adds" => "By how much does the mouth fitting lengthen the tube?",
            _ => throw new ArgumentException($"A mouthpiece that is {kind} has no size {key}.", nameof(key)),
        };

    public static string Socket(string side) =>
        $"Which socket takes the pipe {(side == "before" ? "before it" : "after it")}? A name of the catalogue, or 'measured'";

    public static string JoinSize(string key) =>
        key switch
        {
            "gap" => "How far does a pipe stay away from the stop in its socket?",
            "inside" => "How wide is it inside, between the stops?",
            "between" => "How far are the stops apart?",
            "radius" => "What is the radius of its bend, measured to the middle of the bore?",
            _ => throw new ArgumentException($"No join has a size {key}.", nameof(key)),
        };

    public static string NotANumber(string text) => $"'{text}' is not a number; write, for example, 90.";

    public static string NotAChoice(string text, IReadOnlyList<string> choices, string? meant) =>
        meant is null
            ? $"'{text}' is not an answer to this; write {string.Join(", ", choices.SkipLast(1))} or {choices[^1]}."
            : DidYouMean(text, meant);

    public static string DidYouMean(string text, string meant) =>
        $"'{text}' is not known; did you mean '{meant}'?";

    public static string OrMeasured(string problem) => $"{problem} Or write 'measured'.";
}
