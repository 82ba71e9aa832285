using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using AirColumn.Workshop;
using UnitsNet;

namespace DroneTube;

/// <summary>Numbers with their units, and sentences on lines, the same in every culture.</summary>
internal static partial class Show
{
    private const int Width = 79;

    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    public static string Millimetres(Length length) => Text($"{length.Millimeters:0.#} mm");

    /// <summary>For what adds up: two decimals, without zeros at the end.</summary>
    public static string Hundredths(Length length) => Text($"{length.Millimeters:0.##} mm");

    /// <summary>What a caliper reads, in the units asked for, else both: "2.4 mm (0.094 in)".</summary>
    public static string Size(Length length) => LengthText.Caliper(length, Units);

    public static string Inches(Length length) => InchFraction.Describe(length);

    /// <summary>In which units <see cref="Both"/> shows lengths: set once, from the command line.</summary>
    // Of the thread, so that runs side by side in one process do not meet.
    public static LengthUnits Units
    {
        get => units;
        set => units = value;
    }

    [ThreadStatic]
    private static LengthUnits units;

    /// <summary>In the units asked for, else both: "14.2 mm (9/16 in)".</summary>
    public static string Both(Length length) => LengthText.Tape(length, Units);

    /// <summary>
    /// The largest cut that may be made: in inches it is in whole sixteenths, rounded down, so that inches cut no more than millimetres.
    /// </summary>
    public static string AtMost(Length length) => LengthText.AtMost(length, Units);

    /// <summary>What is to be left at least: the same, whole sixteenths rounded up.</summary>
    public static string AtLeast(Length length) => LengthText.AtLeast(length, Units);

    public static string Cents(double cents) => Text($"{cents:+0.0;-0.0;+0.0} cents");

    /// <summary>For a sentence: "3.1 cents flat".</summary>
    public static string SharpOrFlat(double cents) =>
        Text($"{Math.Abs(cents):0.0} cents {(cents < 0 ? "flat" : "sharp")}");

    public static string Hertz(Frequency frequency) => Text($"{frequency.Hertz:0.00} Hz");

    /// <summary>Adds a paragraph, broken between words.</summary>
    /// <param name="lines">What it is added to.</param>
    /// <param name="text">The paragraph.</param>
    /// <param name="first">Spaces before the first line.</param>
    /// <param name="rest">Spaces before the others.</param>
    public static void Paragraph(this StringBuilder lines, string text, int first = 0, int rest = 0)
    {
        var line = new string(' ', first);
        var words = 0;
        foreach (var word in Breaks().Split(text))
        {
            if (words > 0 && line.Length + 1 + word.Length > Width)
            {
                lines.Row(line);
                (line, words) = (new string(' ', rest), 0);
            }

            line += words++ == 0 ? word : $" {word}";
        }

        lines.Row(line);
    }

    // Not between a number and its fraction or its unit.
    [GeneratedRegex(@" (?!(?<=\d )(\d+/\d|(mm|in|ft|m|Hz|cents|°C|%)\b))")]
    private static partial Regex Breaks();

    /// <summary>Adds the caution that belongs to every order to saw.</summary>
    public static void Care(this StringBuilder lines)
    {
        var cutting = Cautions.For(CautionStep.Cutting);
        lines.Paragraph($"{cutting.Title}: {cutting.Text} {Cautions.First}", 0, 2);
    }

    /// <summary>Adds a line; '\n' on every system.</summary>
    public static void Row(this StringBuilder lines, string text = "") =>
        lines.Append(text.TrimEnd()).Append('\n');
}
