using System.CommandLine;
using System.Globalization;
using AirColumn.Design;
using AirColumn.Pitches;
using AirColumn.Resonances;
using Shared;
using UnitsNet;

namespace ColumnTool;

/// <summary>length FILE: how long a section must be for a resonance, the first unless said, to lie on a pitch.</summary>
internal static class LengthVerb
{
    public static Command Create()
    {
        var file = new ColumnFile();
        var section = Options.WholeNumber(
            "--section",
            "Which section, counted from 1 at the blown end.",
            1,
            100_000
        );
        section.Required = true;
        var pitch = Options.Parsed<Pitch?>(
            "--pitch",
            "The pitch, such as C2 or F#3.",
            text => Pitch.Parse(text)
        );
        pitch.Required = true;
        var resonance = Options.WholeNumber(
            "--resonance",
            "Which resonance, counted from 1; the first if left out.",
            1,
            1000
        );
        var reference = ReferenceOption.Create();
        var json = JsonSwitch.Create();
        var verb = new Command(
            "length",
            "The length of one section that puts a resonance on a pitch, everything else kept."
        )
        {
            file.Argument,
            file.OtherFronts,
            file.OtherModes,
            section,
            pitch,
            resonance,
            reference,
            json,
        };
        verb.SetAction(parsed =>
        {
            var tuning = ReferenceOption.Tuning(parsed, reference);
            var number = parsed.GetRequiredValue(section)!.Value;
            var target = parsed.GetRequiredValue(pitch)!.Value;
            var which = parsed.GetValue(resonance) ?? 1;
            var solution = Solve(file, parsed, number, tuning, target, which);
            var warnings = solution.Column.FirstResonances(1, TimeLimitOption.Token(parsed)).Warnings;
            var text = parsed.GetValue(json)
                ? Json(solution, warnings)
                : Table(solution, number, target, tuning, which);
            ConsoleProgram.Warn(parsed, warnings);
            Answer.Write(parsed, output => output.Write(text));
        });
        return verb;
    }

    private static LengthSolution Solve(
        ColumnFile file,
        ParseResult parsed,
        int number,
        Tuning tuning,
        Pitch target,
        int resonance
    )
    {
        var column = file.Read(parsed);
        var sections = column.Bore.Sections.Count;
        if (number > sections)
        {
            throw new BadInputException(
                $"--section is {number}; allowed is 1 to {sections} in this document."
            );
        }

        var frequency = tuning.FrequencyOf(target);
        if (frequency > column.HighestFrequency)
        {
            throw new BadInputException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"--pitch {target} is {frequency.Hertz:F1} Hz; allowed is up to {column.HighestFrequency.Hertz:F1} Hz in this bore."
                )
            );
        }

        try
        {
            var solution = SectionLength.Solve(
                column,
                new LengthQuestion(number - 1, frequency) { Resonance = resonance },
                TimeLimitOption.Token(parsed)
            );
            return solution.IsSolved ? solution : throw new FailureException(solution.Explanation);
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem, "--pitch"));
        }
    }

    private static string Json(LengthSolution solution, IReadOnlyList<string> warnings) =>
        JsonText.Of(json =>
        {
            json.Number("lengthMetres", solution.Length.Meters);
            json.Number("frequencyHz", solution.Frequency.Hertz);
            json.Number("centsPerMillimetre", solution.CentsPerMillimetre);
            json.Texts("warnings", warnings);
        });

    private static string Table(
        LengthSolution solution,
        int number,
        Pitch target,
        Tuning tuning,
        int resonance
    )
    {
        var which = resonance == 1 ? "first resonance     " : $"resonance {resonance}".PadRight(20);
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"""
            length of section {number}  {Shown(solution.Length)}
            {which} {solution.Frequency.Hertz:F3} Hz, {target} ({tuning})
            1 mm longer          {solution.CentsPerMillimetre:+0.000;-0.000} cents

            """
        );
        return text.ReplaceLineEndings("\n");
    }

    // Beyond 10 m nobody counts millimetres.
    private static string Shown(Length length) =>
        length.Meters < 10
            ? string.Create(CultureInfo.InvariantCulture, $"{length.Millimeters:F2} mm")
            : string.Create(CultureInfo.InvariantCulture, $"{length.Meters:F3} m");
}
