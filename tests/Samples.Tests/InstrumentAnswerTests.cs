using System.Text.Json;
using System.Text.Json.Nodes;
using AirColumn;
using AirColumn.Documents;
using UnitsNet;

namespace Samples.Tests;

/// <summary>The instruments that are written by hand: ColumnTool answers their lines as a program in C# does, to the last digit.</summary>
public class InstrumentAnswerTests
{
    private static readonly string Folder = Path.Combine(ShownPage.Top, "samples", "Instruments");

    private static readonly string[] Questions =
    [
        "\"verb\":\"resonances\",\"count\":3",
        "\"verb\":\"reflection\",\"at\":[440]",
    ];

    [Fact]
    public void Answers_are_those_of_a_program_in_C_sharp()
    {
        (string File, string? Fingering)[] asked =
        [
            ("clarinet.json", "three"),
            ("flute.json", null),
            ("drone.json", null),
            .. Enumerable.Range(1, 5).Select(i => (Path.Combine("pan-pipes", $"{i}.json"), (string?)null)),
        ];
        var requests = asked.SelectMany(
            (one, i) =>
                Questions.Select(
                    (question, n) =>
                        $$"""{"id":{{2 * i + n}},"file":{{JsonSerializer.Serialize(Path.Combine(Folder, one.File))}},{{Fingered(one.Fingering)}}{{question}}}"""
                )
        );
        var lines = Sample.Lines(string.Join('\n', requests), jobs: 1);
        var answers = lines
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => JsonNode.Parse(line)!["answer"]!)
            .ToList();
        Assert.Equal(2 * asked.Length, answers.Count);
        for (var i = 0; i < asked.Length; i++)
        {
            var document = ColumnDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, asked[i].File)));
            var column = asked[i].Fingering is { } name ? document.ToColumn(name) : document.ToColumn();
            Assert.Equal(
                column.FirstResonances(3).Select(one => (one.Frequency.Hertz, one.QualityFactor)),
                answers[2 * i]["resonances"]!
                    .AsArray()
                    .Select(one => ((double)one!["frequencyHz"]!, (double)one["q"]!))
            );
            var reflection = column.ReflectionAt(Frequency.FromHertz(440));
            Assert.Equal(
                (reflection.Real, reflection.Imaginary),
                ((double)answers[2 * i + 1]["re"]![0]!, (double)answers[2 * i + 1]["im"]![0]!)
            );
            // What it rests on is what the library says.
            var provenance = JsonSerializer.SerializeToNode(Provenance.Of(column, document));
            Assert.True(JsonNode.DeepEquals(provenance, answers[2 * i]["provenance"]), lines);
        }

        static string Fingered(string? name) => name is null ? "" : $"\"fingering\":\"{name}\",";
    }
}
