using System.CommandLine;
using System.Globalization;
using AirColumn.Acoustics;
using Shared;

namespace ColumnTool;

/// <summary>impedance FILE: input impedance in Pa·s/m³ as CSV.</summary>
internal static class ImpedanceVerb
{
    private const double LowestHertz = 1e-6;
    private const double HighestHertz = 1e9;
    private const int MostPoints = 1_000_000;

    public static Command Create()
    {
        var file = new ColumnFile();
        var at = Options.Parsed(
            "--at",
            "Frequencies in Hz with commas between, in any order: 30,33.17",
            List
        );
        var from = Options.Number("--from", "The first frequency in Hz.", LowestHertz, HighestHertz, "Hz");
        var to = Options.Number("--to", "The last frequency in Hz.", LowestHertz, HighestHertz, "Hz");
        var points = Options.WholeNumber("--points", "How many frequencies, equally spaced.", 2, MostPoints);
        var verb = new Command(
            "impedance",
            "Input impedance, Pa·s/m³, as CSV: frequency_hz,re,im. Give --at, or --from, --to and --points."
        )
        {
            file.Argument,
            file.OtherFronts,
            file.OtherModes,
            at,
            from,
            to,
            points,
        };
        verb.SetAction(parsed =>
        {
            var list = parsed.GetResult(at) is null ? null : parsed.GetValue(at);
            var span = (parsed.GetValue(from), parsed.GetValue(to), parsed.GetValue(points));
            double[] hertz = (list, span) switch
            {
                (not null, (null, null, null)) => list,
                (null, ({ } first, { } last, { } count)) when last > first => Spaced(first, last, count),
                (null, ({ } first, { } last, { })) => throw new BadInputException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"--to is {last} Hz; it must be above --from, {first} Hz."
                    )
                ),
                _ => throw new BadInputException(
                    "Say at which frequencies: either --at 30,33.17 or --from 20 --to 2000 --points 4096."
                ),
            };
            Print(parsed, file.Read(parsed), hertz);
        });
        return verb;
    }

    private static void Print(ParseResult parsed, Column column, double[] hertz)
    {
        // The grid is in increasing order, each frequency once; the rows are as they were asked for.
        double[] increasing = [.. hertz.Distinct().Order()];
        var curve = Curve(column, FrequencyGrid.FromHertz(increasing), TimeLimitOption.Token(parsed));
        for (var i = 0; i < curve.Count; i++)
        {
            if (!(double.IsFinite(curve.Real[i]) && double.IsFinite(curve.Imaginary[i])))
            {
                throw new FailureException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The impedance at {increasing[i]:R} Hz is not finite: a column without losses resonates there."
                    )
                );
            }
        }

        ConsoleProgram.Warn(parsed, curve.Warnings);
        Answer.Write(
            parsed,
            output =>
            {
                output.WriteLine("frequency_hz,re,im");
                foreach (var frequency in hertz)
                {
                    var i = Array.BinarySearch(increasing, frequency);
                    output.WriteLine(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{frequency:R},{curve.Real[i]:R},{curve.Imaginary[i]:R}"
                        )
                    );
                }
            }
        );
    }

    private static ImpedanceCurve Curve(Column column, FrequencyGrid grid, CancellationToken token)
    {
        try
        {
            return column.Impedance(grid, token);
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem, "The highest frequency"));
        }
    }

    private static double[] Spaced(double from, double to, int points)
    {
        try
        {
            return FrequencyGrid.Linear(from, to, points).Hertz.ToArray();
        }
        catch (ArgumentException)
        {
            throw new BadInputException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"--from {from} Hz and --to {to} Hz are too near for --points {points}: some of these would coincide. Ask for fewer."
                )
            );
        }
    }

    private static double[] List(string text)
    {
        return [.. text.Split(',').Select(item => Positive(item.Trim()))];

        static double Positive(string item) =>
            Options.Number(item) is { } hertz && hertz is >= LowestHertz and <= HighestHertz
                ? hertz
                : throw new FormatException(
                    $"'{item}' is not a frequency; write numbers of Hz above 0 with commas between, such as 30,33.17."
                );
    }
}
