using AirColumn.Documents;

namespace AirColumn.Studies;

/// <summary>Reads a study document.</summary>
internal static class StudyReader
{
    /// <summary>How many items a study may have.</summary>
    public const long MostItems = 1_000_000_000_000;

    private const int Version = 1;
    private const int KeysOfColumns = 2; // those of x- are left alone, as in a column document
    private const int MostParameters = 100;
    private const int MostResonances = 100;
    private const int MostFrequencies = 1000;
    private const long LargestSeed = 1L << 53;

    private const string Example =
        "{ \"parameter\": \"length of section 1\", \"uniform\": { \"from\": \"900 mm\", \"to\": \"1100 mm\" } }";

    private const string PointsExample = "{ \"by\": \"sobol\", \"count\": 10000 }";
    private const string AnswersExample = "{ \"resonances\": 10 }";

    /// <summary>Reads a study.</summary>
    public static Study Read(ReadOnlyMemory<byte> utf8)
    {
        using var json = DocumentReader.Json(utf8, "a JSON object that begins with \"study\": 1");
        var document = DocumentObject.Of(
            new DocumentValue("", json.RootElement, KeysOfColumns),
            "{ \"study\": 1, … }"
        );
        var version = document.Required("study", "1, the version of the format");
        if (version.Number() != Version)
        {
            throw version.Wrong("this reader knows version 1 of the format; write \"study\": 1.");
        }

        document.AllowOnly(["study", "name", "column", "parameters", "points", "answers"]);
        var name = document.Optional("name")?.Text();
        var column = DocumentReader.Read(document.Required("column", "{ \"column\": 2, … }"));
        var parameters = Parameters(document.Required("parameters", $"[{Example}]"), column.ToColumn());
        var points = Points(document, parameters);
        var answers = Answers(document.Required("answers", AnswersExample));
        RequireCount(document, parameters, points);
        return new Study(name, column, parameters, points, answers, CanonicalJson.Of(json.RootElement));
    }

    private static StudyParameter[] Parameters(DocumentValue list, Column column)
    {
        var items = list.List(MostParameters, $"it must be a list, such as [{Example}].");
        if (items.Count == 0)
        {
            throw new ColumnDocumentException(
                list.Path,
                $"{list.Path} is empty; a study changes at least 1 parameter, such as {Example}."
            );
        }

        var parameters = new List<StudyParameter>();
        foreach (var item in items)
        {
            var parameter = Parameter(DocumentObject.Of(item, Example), column);
            if (parameters.Any(other => other.Parameter.Equals(parameter.Parameter)))
            {
                throw new ColumnDocumentException(
                    $"{item.Path}.parameter",
                    $"{item.Path}.parameter: the {parameter} is named twice; name it once."
                );
            }

            parameters.Add(parameter);
        }

        return [.. parameters];
    }

    private static StudyParameter Parameter(DocumentObject item, Column column)
    {
        item.AllowOnly(["parameter", .. SpreadReader.Kinds]);
        var name = item.Required("parameter", "\"length of section 1\"");
        var text = name.Text("it must be a text, such as \"length of section 1\".");
        ColumnParameter parameter;
        try
        {
            parameter = ColumnParameter.Parse(text);
            _ = parameter.Of(column);
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            var message = problem is ArgumentException { ParamName: { } of }
                ? problem.Message.Replace($" (Parameter '{of}')", "", StringComparison.Ordinal)
                : problem.Message;
            throw new ColumnDocumentException(name.Path, $"{name.Path}: {message}", problem);
        }

        return new StudyParameter(parameter, SpreadReader.Read(item, parameter.Unit));
    }

    private static StudyPoints? Points(DocumentObject document, StudyParameter[] parameters)
    {
        var drawn = parameters.Count(parameter => parameter.Steps is null);
        if (document.Optional("points") is not { } value)
        {
            return drawn == 0
                ? null
                : throw new ColumnDocumentException(
                    "points",
                    $"points is missing, and {drawn} of the parameters are drawn from a distribution; write \"points\": {PointsExample}."
                );
        }

        if (drawn == 0)
        {
            throw new ColumnDocumentException(
                "points",
                "points has no effect if every parameter has steps or values; leave it out."
            );
        }

        var points = DocumentObject.Of(value, PointsExample);
        points.AllowOnly(["by", "count", "seed"]);
        var by = points.Required("by", "\"sobol\"");
        var kind = by.Word("sobol", "random") == "sobol" ? StudyPointKind.Sobol : StudyPointKind.Random;
        if (kind == StudyPointKind.Sobol && drawn > SobolSequence.Dimensions)
        {
            throw by.Wrong(
                $"the sequence has {SobolSequence.Dimensions} dimensions here, and {drawn} parameters are drawn; write \"random\", or draw fewer."
            );
        }

        var seed = points.Optional("seed") is { } given ? given.Whole(0, LargestSeed) : (long?)null;
        return kind == StudyPointKind.Random && seed is null
            ? throw new ColumnDocumentException(
                "points.seed",
                "points.seed is missing; write a whole number, such as \"seed\": 1: the same number draws the same points."
            )
            : new StudyPoints(kind, points.Required("count", "10000").Whole(1, MostItems), seed);
    }

    private static StudyAnswers Answers(DocumentValue value)
    {
        var answers = DocumentObject.Of(value, AnswersExample);
        answers.AllowOnly([
            "resonances",
            "intervals",
            "qualityFactors",
            "magnitudes",
            "gradients",
            "indicators",
            "impedance",
        ]);
        var asked = new StudyAnswers
        {
            Resonances = answers.Optional("resonances") is { } count
                ? (int)count.Whole(1, MostResonances)
                : 0,
            Intervals = OfResonances("intervals"),
            QualityFactors = OfResonances("qualityFactors"),
            Magnitudes = OfResonances("magnitudes"),
            Gradients = OfResonances("gradients"),
            Indicators = Switch("indicators"),
            ImpedanceAtHertz = answers.Optional("impedance") is { } list ? Frequencies(list) : [],
        };
        return asked is { Resonances: 0, Indicators: false, ImpedanceAtHertz.Count: 0 }
            ? throw new ColumnDocumentException(
                value.Path,
                $"{value.Path} asks for nothing; write the answers you want, such as {AnswersExample}."
            )
            : asked;

        bool OfResonances(string key) =>
            Switch(key) && !answers.Has("resonances")
                ? throw new ColumnDocumentException(
                    answers.PathOf(key),
                    $"{answers.PathOf(key)} is about resonances, of which none are asked for; write \"resonances\": 10 beside it."
                )
                : Switch(key);

        bool Switch(string key) =>
            answers.Optional(key) is { } member
            && member.Json.ValueKind switch
            {
                System.Text.Json.JsonValueKind.True => true,
                System.Text.Json.JsonValueKind.False => false,
                _ => throw member.Wrong("it must be true or false."),
            };
    }

    private static double[] Frequencies(DocumentValue list)
    {
        const string Allowed = "it must be a list of frequencies, such as [\"100 Hz\", \"200 Hz\"].";
        var values = list.List(MostFrequencies, Allowed);
        double[] hertz =
        [
            .. values.Select(value => value.Quantity(QuantityText.ParseFrequency, "100 Hz").Hertz),
        ];
        if (hertz.Length == 0)
        {
            throw list.Wrong(Allowed);
        }

        for (var i = 0; i < hertz.Length; i++)
        {
            if (hertz[i] <= (i == 0 ? 0 : hertz[i - 1]))
            {
                throw values[i].Wrong("frequencies must be above 0 Hz, and each above the one before.");
            }
        }

        return hertz;
    }

    private static void RequireCount(
        DocumentObject document,
        StudyParameter[] parameters,
        StudyPoints? points
    )
    {
        // Not in whole numbers, which would overflow.
        var count = parameters.Aggregate((double)(points?.Count ?? 1), (all, one) => all * (one.Steps ?? 1));
        if (count > MostItems)
        {
            throw new ColumnDocumentException(
                document.PathOf("parameters"),
                $"parameters make {Require.Show(count, "")} items; at most {Require.Show(MostItems, "")} are allowed. Take fewer steps, or draw points."
            );
        }
    }
}
