using AirColumn.Workshop.Questions;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Tests.Questions;

public class TubeQuestionsTests
{
    [Fact]
    public void Usual_answers_make_a_tube()
    {
        var asked = new List<string>();
        var questions = TubeQuestions.Start(Catalogue.Standard);
        while (questions.Next is { } next)
        {
            asked.Add(next.Key);
            questions = questions.With("");
        }

        Assert.Equal(
            "name pipe pipe.inside mouth mouth.inside mouth.outside mouth.inserted mouth.protrudes next",
            string.Join(' ', asked)
        );
        var assembly = Read(questions);
        Assert.Equal(["mouthpiece", "main pipe"], assembly.Parts.Select(part => part.Name));
        Assert.Equal("pvc-40 1-1/2", assembly.FreePipe!.Stock!.Name);
        Assert.False(assembly.FreePipe.IsMeasured);
        Assert.Throws<InvalidOperationException>(() => questions.With(""));
    }

    [Fact]
    public void Answers_are_in_the_file_as_they_were_given()
    {
        var questions = After(
            "Grey one",
            "pvc-40 1-1/2",
            "40.6 mm",
            "insert",
            "1\u215B in",
            "40 mm",
            "",
            "",
            "coupling",
            "",
            "PVC-40 2".ToLowerInvariant(),
            "",
            "41 mm",
            "14 mm",
            "",
            "52.2 mm",
            "150 mm",
            "bell",
            "60 mm",
            "72 mm"
        );
        Assert.Null(questions.Next);
        Assert.Equal("Grey one", questions.Name);
        Assert.Contains("\"1\u215B in\"", questions.PartsFile, StringComparison.Ordinal);
        var parts = Read(questions).Parts;
        Assert.Equal(
            ["InsertPart", "PipePart", "JoinPart", "PipePart", "BellPart"],
            parts.Select(part => part.GetType().Name)
        );
        // 1⅛ in is 28.575 mm.
        Assert.Equal(28.575, ((InsertPart)parts[0]).Inside.Millimeters, 1e-9);
        Assert.Equal(60.325, ((PipePart)parts[3]).Outside.Millimeters, 0.01);
        Assert.Equal(150, ((PipePart)parts[3]).Cut!.Value.Millimeters, 1e-9);
        Assert.Equal(72, ((BellPart)parts[4]).EndInside.Millimeters, 1e-9);
    }

    [Fact]
    public void Measured_pipe_and_sockets_are_asked_for()
    {
        var questions = After(
            "",
            "measured",
            "38 mm",
            "44 mm",
            "none",
            "elbow",
            "measured",
            "44.3 mm",
            "",
            "measured",
            "44.3 mm",
            "20 mm",
            "",
            "",
            "60 mm",
            "45",
            "measured",
            "38 mm",
            "44 mm",
            "",
            "end"
        );
        Assert.Null(questions.Next);
        var elbow = Assert.IsType<JoinPart>(Read(questions).Parts[1]);
        Assert.Equal(20, elbow.After!.Depth.Millimeters, 1e-9);
        // A quarter of a half turn on 60 mm.
        Assert.Equal(60 * Math.PI / 4, elbow.Between.Millimeters, 1e-9);
    }

    [Theory]
    [InlineData("'pvc40 1-1/2' is not known; did you mean 'pvc-40 1-1/2'?", "", "pvc40 1-1/2")]
    [InlineData("'50' is a number without a unit; write \"50 mm\".", "", "measured", "50")]
    [InlineData("This question has no usual answer; write one.", "", "measured", "")]
    [InlineData("the outside diameter must be the larger", "", "measured", "50 mm", "48 mm")]
    [InlineData("'insrt' is not known; did you mean 'insert'?", "", "", "", "insrt")]
    [InlineData("'horn' is not an answer to this; write insert, fitting or none.", "", "", "", "horn")]
    [InlineData("does not go into the pipe 'main pipe'", "", "", "", "", "", "45 mm")]
    public void A_wrong_answer_is_told_at_once(string says, params string[] answers)
    {
        var before = After(answers[..^1]);
        var problem = Assert.Throws<FormatException>(() => before.With(answers[^1]));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(answers.Length - 1, before.Answers.Count);
    }

    [Fact]
    public void One_can_go_back()
    {
        var questions = After("Grey one", "");
        Assert.Equal("pipe.inside", questions.Next!.Key);
        Assert.Equal("pipe", questions.Back().Next!.Key);
        Assert.Equal("name", questions.Back().Back().Back().Next!.Key);
    }

    private static TubeQuestions After(params string[] answers) =>
        answers.Aggregate(TubeQuestions.Start(Catalogue.Standard), (asked, answer) => asked.With(answer));

    private static TubeAssembly Read(TubeQuestions questions) =>
        PartsFile.Read(questions.PartsFile!, Catalogue.Standard).Assembly;
}
