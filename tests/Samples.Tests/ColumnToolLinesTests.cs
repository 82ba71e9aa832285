using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Samples.Tests;

/// <summary>Many questions to one process of ColumnTool.</summary>
public sealed class ColumnToolLinesTests : IDisposable
{
    private const string Tube =
        """{"column":1,"sections":[{"shape":"cylinder","diameter":"30 mm","length":"1 m"}],"farEnd":{"kind":"open"}}""";

    // Its second section alone is too long for the notes of the first octaves.
    private const string Stopped =
        """{"column":1,"sections":[{"shape":"cylinder","diameter":"30 mm","length":"1 m"},{"shape":"cylinder","diameter":"30 mm","length":"1 m"}],"farEnd":{"kind":"open"}}""";

    private readonly List<Process> begun = [];

    public void Dispose()
    {
        foreach (var process in begun)
        {
            process.Kill();
            process.Dispose();
        }
    }

    [Fact]
    public void Errors_have_a_code_the_document_and_the_place()
    {
        const string Misspelt =
            """{"column":1,"sections":[{"shape":"cylinder","diameter":"30 mm","length":30}],"farEnd":{"kind":"open"}}""";
        string[] requests =
        [
            """{"id":1,"verb":"column","file":"none.json"}""",
            $$"""{"id":2,"verb":"column","document":{{Misspelt}}}""",
            $$"""{"id":3,"verb":"resonances","document":{{Tube}},"count":0}""",
            $$"""{"id":4,"verb":"length","document":{{Tube}},"section":2,"pitch":"C3"}""",
            $$"""{"id":5,"verb":"length","document":{{Stopped}},"section":1,"pitch":"A4"}""",
            """{"id":6,"verb":"resonance"}""",
            """{"id":7,""",
            "[]",
            """{"verb":"air"}""",
            """{"id":8,"id":8,"verb":"air","temperature":"20 °C"}""",
        ];
        var replies = Replies(Sample.ColumnTool(string.Join('\n', requests), "lines").Succeeded());
        Assert.Equal(("file", "none.json", null), Error(replies, "1"));
        Assert.Equal(("document", null, "sections[0].length"), Error(replies, "2"));
        Assert.Equal(("arguments", null, "count"), Error(replies, "3"));
        Assert.Equal(("arguments", null, "section"), Error(replies, "4"));
        Assert.Equal(("unanswered", null, null), Error(replies, "5"));
        Assert.Equal(("request", null, null), Error(replies, "6"));
        Assert.Equal(("request", null, null), Error(replies, "7"));
        Assert.Equal(("arguments", null, "id"), Error(replies, "8"));
        Assert.Equal(2, replies.Count(reply => reply["id"] is null));
        Assert.Equal(requests.Length, replies.Count);
    }

    // What takes long does not hold up what does not, and can be taken back; its id is free again then.
    [Fact]
    public void Answers_come_as_they_are_there_and_questions_can_be_taken_back()
    {
        var tool = Begin("--jobs", "2");
        Ask(tool, $$"""{"id":"long","verb":"resonances","document":{{TimeLimitTests.Wild()}}}""");
        Ask(tool, $$"""{"id":"long","verb":"resonances","document":{{Tube}}}""");
        Assert.Equal(("request", null, null), Error([Next(tool)], "\"long\""));
        for (var i = 0; i < 3; i++)
        {
            Ask(tool, $$"""{"id":{{i}},"verb":"resonances","document":{{Tube}},"count":1}""");
            Assert.Equal($"{i}", Id(Next(tool)));
        }

        Ask(tool, """{"id":4,"verb":"cancel","question":"long"}""");
        var both = new[] { Next(tool), Next(tool) };
        Assert.True((bool?)both.Single(reply => Id(reply) == "4")["answer"]!["found"]);
        Assert.Equal(("cancelled", null, null), Error(both, "\"long\""));
        Ask(tool, """{"id":5,"verb":"cancel","question":"long"}""");
        Assert.False((bool?)Next(tool)["answer"]!["found"]);
        tool.StandardInput.Close();
        Assert.True(tool.WaitForExit(20_000));
        Assert.Equal(0, tool.ExitCode);
    }

    // One thread, kept busy: what waits behind it is answered for at once when it is taken back.
    [Fact]
    public void A_question_that_waits_is_taken_back_at_once_and_one_that_takes_too_long_is_given_up()
    {
        var tool = Begin("--jobs", "1");
        Ask(tool, $$"""{"id":1,"verb":"resonances","document":{{TimeLimitTests.Wild()}},"timeLimit":3}""");
        Ask(tool, $$"""{"id":2,"verb":"column","document":{{Tube}}}""");
        Ask(tool, """{"id":3,"verb":"cancel","question":2}""");
        Assert.Equal(("cancelled", null, null), Error([Next(tool)], "2"));
        Assert.Equal("3", Id(Next(tool)));
        Assert.Equal(("time", null, null), Error([Next(tool)], "1"));
    }

    [Fact]
    public void Files_can_be_forbidden()
    {
        var reply = Replies(
            Sample
                .ColumnTool("""{"id":1,"verb":"column","file":"/etc/hostname"}""", "lines", "--no-files")
                .Succeeded()
        );
        Assert.Equal(("file", "/etc/hostname", "file"), Error(reply, "1"));
    }

    // Some hundred megabytes of lines and answers, read by nobody at first: the program waits rather than fill the memory.
    [UnixFact]
    public void Memory_does_not_grow_with_what_is_asked()
    {
        var tool = Begin("--jobs", "2");
        var points = Amount.Of(200, 2000);
        var padded =
            $$"""{"id":%,"verb":"impedance","document":{{Tube}},"from":20,"to":2000,"points":{{points}}{{new string(' ', 100_000)}}}""";
        var written = 0;
        const int Questions = 1500;
        var asking = Task.Run(() =>
        {
            for (var i = 0; i < Questions; i++)
            {
                Ask(tool, padded.Replace("%", $"{i}", StringComparison.Ordinal));
                Volatile.Write(ref written, i + 1);
            }

            tool.StandardInput.Close();
        });
        // Until nothing is taken any more.
        var before = 0;
        while (before == 0 || Volatile.Read(ref written) != before)
        {
            before = Volatile.Read(ref written);
            Thread.Sleep(1500);
        }

        Assert.InRange(before, 1, Questions / 2);
        var answered = 0;
        var most = 0L;
        while (tool.StandardOutput.ReadLine() is not null)
        {
            if (++answered % 100 == 1)
            {
                most = Math.Max(most, Resident(tool));
            }
        }

        asking.GetAwaiter().GetResult();
        Assert.Equal(Questions, answered);
        // 150 MB of lines went through it, and in the long run as much of answers.
        Assert.InRange(most, 1, 260_000_000);
    }

    private static long Resident(Process tool)
    {
        tool.Refresh();
        return tool.HasExited ? 0 : tool.WorkingSet64;
    }

    private Process Begin(params string[] options)
    {
        var tool = Sample.ColumnToolStarted(["lines", .. options]);
        begun.Add(tool);
        tool.StandardInput.AutoFlush = true;
        return tool;
    }

    private static void Ask(Process tool, string request) => tool.StandardInput.Write(request + "\n");

    private static JsonNode Next(Process tool)
    {
        var line = tool.StandardOutput.ReadLineAsync();
        Assert.True(line.Wait(TimeSpan.FromSeconds(30)), "There is no answer.");
        return JsonNode.Parse(line.Result!)!;
    }

    private static List<JsonNode> Replies(string lines) =>
        [.. lines.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonNode.Parse(line)!)];

    private static string Id(JsonNode reply) => reply["id"]?.ToJsonString() ?? "";

    private static (string? Code, string? Document, string? Place) Error(
        IEnumerable<JsonNode> replies,
        string id
    )
    {
        var error = replies.Single(reply => Id(reply) == id)["error"];
        Assert.NotNull(error);
        Assert.False(string.IsNullOrWhiteSpace((string?)error["message"]));
        return ((string?)error["code"], (string?)error["document"], (string?)error["place"]);
    }
}
