using System.Text;
using AirColumn.Documents;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace AirColumn.Tests.Documents;

[Properties(Arbitrary = [typeof(DocumentArbitraries)])]
public class ColumnDocumentPropertyTests
{
    private static readonly string[] Pieces =
    [
        "\"",
        "{",
        "}",
        "[",
        "]",
        ",",
        ":",
        "-",
        "0",
        "9",
        "1e999",
        "NaN",
        "null",
        "true",
        "\\ud800",
        "\\u0000",
        "°",
        "\uFFFF",
        " mm",
        "\"length\"",
        "//",
    ];

    [Property(MaxTest = 300)]
    public void A_document_survives_writing_and_reading(ColumnDocument document)
    {
        var text = document.ToJson();
        var read = ColumnDocument.Parse(text);
        Assert.Equal(document, read);
        Assert.Equal(text, read.ToJson());
    }

    [Property(MaxTest = 3000)]
    public Property A_changed_document_is_read_or_refused_in_one_line() =>
        Prop.ForAll(
            (
                from places in Gen.Choose(0, Sample.Full.Length - 1).NonEmptyListOf()
                from pieces in Gen.Elements(Pieces).ArrayOf(places.Count)
                from cut in Gen.Choose(0, 6).ArrayOf(places.Count)
                select (places, pieces, cut)
            ).ToArbitrary(),
            change =>
            {
                var text = new StringBuilder(Sample.Full);
                for (var i = 0; i < Math.Min(change.places.Count, 4); i++)
                {
                    var place = Math.Min(change.places[i], text.Length);
                    text.Remove(place, Math.Min(change.cut[i], text.Length - place));
                    text.Insert(place, change.pieces[i]);
                }

                AssertReadOrRefused(text.ToString());
            }
        );

    // Values change, JSON stays JSON: so what lies behind the JSON reader is reached each time.
    [Property(MaxTest = 3000)]
    public Property A_document_with_other_values_is_read_or_refused_in_one_line()
    {
        var words = Sample.Full.Split('"').Where((_, i) => i % 2 == 1).Distinct().ToArray();
        string[] more =
        [
            "",
            "horn",
            "smooth",
            "-1 mm",
            "1e-300 mm",
            "1e300 km",
            "1/3 in",
            "NaN mm",
            "130 %",
            "-300 °C",
            "\\ud800",
            "\\n",
            "density",
        ];
        return Prop.ForAll(
            (
                from pairs in (
                    from old in Gen.Elements(words)
                    from replacement in Gen.Elements([.. words, .. more])
                    select (old, replacement)
                ).NonEmptyListOf()
                from quoted in Gen.Elements("\"", "")
                select (pairs, quoted)
            ).ToArbitrary(),
            change =>
            {
                var text = Sample.Full;
                foreach (var (old, replacement) in change.pairs.Take(3))
                {
                    text = text.Replace($"\"{old}\"", $"\"{replacement}\"", StringComparison.Ordinal);
                }

                AssertReadOrRefused(
                    change.quoted.Length > 0
                        ? text
                        : text.Replace("\"40 mm\"", "40", StringComparison.Ordinal)
                );
            }
        );
    }

    private static void AssertReadOrRefused(string text)
    {
        ColumnDocument document;
        try
        {
            document = ColumnDocument.Parse(text);
        }
        catch (ColumnDocumentException problem)
        {
            Assert.InRange(problem.Message.Length, 10, 500);
            Assert.DoesNotContain(problem.Message, char.IsControl);
            Assert.EndsWith(".", problem.Message, StringComparison.Ordinal);
            Assert.DoesNotContain("(Parameter", problem.Message, StringComparison.Ordinal);
            return;
        }

        Assert.Equal(document, ColumnDocument.Parse(document.ToJson()));
    }
}
