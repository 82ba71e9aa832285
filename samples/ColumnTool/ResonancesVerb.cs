using System.CommandLine;
using System.Globalization;
using AirColumn.Acoustics;
using AirColumn.Pitches;
using AirColumn.Resonances;
using Shared;
using UnitsNet;

namespace ColumnTool;

/// <summary>resonances FILE: frequency, magnitude, quality factor and nearest pitch of the lowest resonances.</summary>
internal static class ResonancesVerb
{
    private const int UsualCount = 8;

    public static Command Create()
    {
        var file = new ColumnFile();
        var count = Options.WholeNumber("--count", $"How many at most; {UsualCount} if left out.", 1, 10_000);
        var below = Options.Frequency("--below", "Only those below this frequency in Hz.");
        var reference = ReferenceOption.Create();
        var json = JsonSwitch.Create();
        var verb = new Command(
            "resonances",
            "The lowest resonances: maxima of |Z| at a closed blown end, minima at an open one."
        )
        {
            file.Argument,
            file.OtherFronts,
            file.OtherModes,
            count,
            below,
            reference,
            json,
        };
        verb.SetAction(parsed =>
        {
            var tuning = ReferenceOption.Tuning(parsed, reference);
            var column = file.Read(parsed);
            var token = TimeLimitOption.Token(parsed);
            var most = parsed.GetValue(count);
            var found = parsed.GetValue(below) is { } limit
                ? Below(column, limit, token)
                : column.FirstResonances(most ?? UsualCount, token);
            Resonance[] resonances = [.. found.Take(most ?? int.MaxValue)];
            var text = parsed.GetValue(json)
                ? Json(resonances, found.Warnings, tuning)
                : Table(resonances, tuning);
            ConsoleProgram.Warn(parsed, found.Warnings);
            Answer.Write(parsed, output => output.Write(text));
        });
        return verb;
    }

    private static ResonanceList Below(Column column, Frequency limit, CancellationToken token)
    {
        try
        {
            return column.Resonances(limit, token);
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem, "--below"));
        }
    }

    private static string Json(Resonance[] resonances, IReadOnlyList<string> warnings, Tuning tuning) =>
        JsonText.Of(json =>
        {
            json.WriteStartArray("resonances");
            foreach (var resonance in resonances)
            {
                var reading = Reading(resonance, tuning);
                json.WriteStartObject();
                json.Number("frequencyHz", resonance.Frequency.Hertz);
                json.Number("magnitude", Magnitude(resonance));
                json.Number("q", resonance.QualityFactor);
                json.WriteString("pitch", reading?.Pitch.ToString());
                json.Number("cents", reading?.Cents ?? double.NaN);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.Texts("warnings", warnings);
        });

    private static string Table(Resonance[] resonances, Tuning tuning)
    {
        var lines = resonances.Select(
            (resonance, i) =>
            {
                var reading = Reading(resonance, tuning)?.ToString() ?? "";
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{i + 1, 3}  {resonance.Frequency.Hertz, 12:F3}  {reading, -16}  {Magnitude(resonance), 11:0.000e+0}  {resonance.QualityFactor, 9:F1}\n"
                );
            }
        );
        return $"  #  frequency/Hz  pitch             |Z|/(Pa·s/m³)       Q\n{string.Concat(lines)}{tuning}\n";
    }

    // Without losses a peak has no height; what rounding makes of it is not an answer.
    public static double Magnitude(Resonance resonance) =>
        double.IsFinite(resonance.QualityFactor) ? resonance.Magnitude : double.PositiveInfinity;

    // Names of pitches end below 1 Hz and above 100 kHz.
    public static PitchReading? Reading(Resonance resonance, Tuning tuning) =>
        resonance.Frequency.Hertz is >= 1 and <= 100_000 ? resonance.Nearest(tuning) : null;
}
