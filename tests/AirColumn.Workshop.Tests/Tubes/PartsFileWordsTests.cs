using System.Text.RegularExpressions;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Tubes;

/// <summary>Whatever size in a parts file is wrong, what is said of it is in the words of the file.</summary>
public partial class PartsFileWordsTests
{
    private const string Tube = """
        { "tube": 1, "wall": "3 mm", "parts": [
          { "part": "insert", "inside": "30 mm", "outside": "40 mm", "inserted": "25 mm", "protrudes": "12 mm", "price": 4 },
          { "part": "pipe", "stock": "pvc-40 1-1/2", "inside": "40.6 mm", "length": "open" },
          { "part": "elbow", "before": "pvc-40 1-1/2", "after": "pvc-40 1-1/2", "inside": "41 mm", "radius": "50 mm", "angle": 90, "gap": "1 mm" },
          { "part": "pipe", "inside": "40.5 mm", "outside": "48.26 mm", "length": "301 mm" },
          { "part": "coupling", "before": "pvc-40 1-1/2", "after": { "entrance": "60.7 mm", "bottom": "60.2 mm", "depth": "30 mm" }, "inside": "41.5 mm", "between": "14 mm" },
          { "part": "pipe", "stock": "pvc-40 2", "length": "801 mm" },
          { "part": "bend", "radius": "250 mm", "angle": 45, "straightAfter": "100 mm" },
          { "part": "bell", "inside": "72 mm", "length": "60 mm" } ] }
        """;

    [Fact]
    public void No_name_of_the_code_and_no_vast_range_is_said()
    {
        var said = new HashSet<string>();
        foreach (var value in Value().Matches(Tube).Select(match => match.Value).Distinct().ToList())
        {
            foreach (
                var wrong in value.EndsWith("mm\"", StringComparison.Ordinal)
                    ?
                    [
                        "\"0 mm\"",
                        "\"-1 mm\"",
                        "\"0.05 mm\"",
                        "\"2 mm\"",
                        "\"499 mm\"",
                        "\"9 m\"",
                        "\"20 m\"",
                        "\"1e9 m\"",
                    ]
                    : new[] { "0", "-1", "0.0001", "5000", "1e300" }
            )
            {
                var problem = Problem(Tube.Replace(value, wrong, StringComparison.Ordinal));
                if (problem is not null)
                {
                    said.Add(problem);
                }
            }
        }

        // Most of these are impossible.
        Assert.True(said.Count > 60, $"{said.Count}");
        Assert.All(
            said,
            sentence =>
            {
                Assert.DoesNotMatch(
                    NameInCode(),
                    sentence.Replace("straightAfter", "", StringComparison.Ordinal)
                );
                Assert.DoesNotMatch(Vast(), sentence);
                Assert.Matches("^(parts\\[|wall|[A-Z'])", sentence);
            }
        );
    }

    private static string? Problem(string file)
    {
        try
        {
            PartsFile.Read(file, Catalogue.Standard).Assembly.Assemble(Length.FromMillimeters(900));
            return null;
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            var message = problem.Message;
            var appended = message.IndexOf(" (Parameter '", StringComparison.Ordinal);
            return appended < 0 ? message : message[..appended];
        }
    }

    // A size, or an angle.
    [GeneratedRegex("""(?<=: )("[0-9.]+ mm"|[0-9]{2}(?=[, ]))""")]
    private static partial Regex Value();

    [GeneratedRegex("[a-z][A-Z]|Parameter|Exception")]
    private static partial Regex NameInCode();

    [GeneratedRegex(@" to [0-9]{6,}|allowed[^.;]*E\+")]
    private static partial Regex Vast();
}
