using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn;
using AirColumn.Documents;
using Shared;

namespace ColumnTool.Verbs;

/// <summary>What a shape may choose and what it is to reach, in words.</summary>
internal static partial class ShapeText
{
    public const string VariableExample = "length of section 1, 900 mm to 1100 mm";

    public const string TargetExample = "resonance 1 on 65.4 Hz";

    /// <summary>A parameter and its bounds, as answers write it.</summary>
    public static DesignVariable Variable(string text)
    {
        var match = Bounds().Match(text);
        if (!match.Success)
        {
            throw new FormatException(
                $"'{text}' is not a parameter with its bounds; write it like \"{VariableExample}\"."
            );
        }

        var parameter = ColumnParameter.Parse(match.Groups[1].Value);
        return new DesignVariable(
            parameter,
            ParameterText.Value(parameter, match.Groups[2].Value),
            ParameterText.Value(parameter, match.Groups[3].Value)
        );
    }

    /// <summary>A target; notes stand on concert pitch unless a tuning says otherwise.</summary>
    public static ShapeTarget Target(string text, Tuning tuning)
    {
        var match = Goal().Match(text);
        if (!match.Success)
        {
            throw new FormatException(
                $"'{text}' is not something to reach; write it like \"{TargetExample}\", \"resonance 2 on C3\", \"interval from 1 to 2 of 1200 cents\", \"magnitude of resonance 1 on 5e7\", \"total length of 1.2 m\" or \"widening from section 1 to 3\"."
            );
        }

        var target = Plain(match, tuning);
        if (match.Groups["weight"] is { Success: true } weight)
        {
            target = target with { Weight = Number(weight.Value) };
        }

        return match.Groups["fingers"] is { Success: true } fingers
            ? target with
            {
                Fingering = Fingering.Parse(fingers.Value),
            }
            : target;
    }

    private static ShapeTarget Plain(Match match, Tuning tuning)
    {
        if (match.Groups["at"] is { Success: true } at)
        {
            var frequency = Pitch.TryParse(at.Value, out var pitch)
                ? tuning.FrequencyOf(pitch)
                : Options.Hertz(at.Value);
            return ShapeTarget.Resonance(Whole("n"), frequency);
        }

        if (match.Groups["cents"] is { Success: true } cents)
        {
            return ShapeTarget.Interval(Whole("low"), Whole("high"), Number(cents.Value));
        }

        if (match.Groups["level"] is { Success: true } level)
        {
            return ShapeTarget.Level(Whole("m"), Number(level.Value));
        }

        return match.Groups["length"] is { Success: true } length
            ? ShapeTarget.TotalLength(QuantityText.ParseLength(length.Value))
            : ShapeTarget.Widening(Section("first"), Section("last"));

        int Section(string group) =>
            Whole(group) is var number && number >= 1
                ? number - 1
                : throw new FormatException($"'{match.Value}' counts wrongly; the first section is 1.");

        int Whole(string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);
    }

    private static double Number(string text) =>
        Options.Number(text) ?? throw new FormatException($"'{text}' is not a number.");

    [GeneratedRegex("^(.*), (.*) to (.*)$", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Bounds();

    [GeneratedRegex(
        """
            ^(?:
                resonance\ (?<n>[0-9]{1,6})\ on\ (?<at>[^;]+?)
                | interval\ from\ (?<low>[0-9]{1,6})\ to\ (?<high>[0-9]{1,6})\ of\ (?<cents>[^ ;]+)\ cents
                | magnitude\ of\ resonance\ (?<m>[0-9]{1,6})\ on\ (?<level>[^ ;]+)
                | total\ length\ of\ (?<length>[^;]+?)
                | widening\ from\ section\ (?<first>[0-9]{1,6})\ to\ (?<last>[0-9]{1,6})
            )(?:;\ fingered\ (?<fingers>[^;]+))?(?:;\ weight\ (?<weight>[^ ;]+))?$
            """,
        RegexOptions.CultureInvariant | RegexOptions.IgnorePatternWhitespace
    )]
    private static partial Regex Goal();
}
