using System.Text;
using System.Text.Json;
using AirColumn;
using AirColumn.Workshop.Measurements;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>How far to trim, or how to lengthen, in words and as JSON.</summary>
internal static class AdviceText
{
    public static void Write(StringBuilder lines, TrimAdvice advice)
    {
        lines.Paragraph(
            Show.Text(
                $"The player: the note lies {Math.Abs(advice.Correction.MeanCents):0.#} cents {(advice.Correction.MeanCents < 0 ? "below" : "above")} the resonance, standard deviation {advice.Correction.StandardDeviationCents:0.#}."
            )
        );
        lines.Paragraph(advice.VerdictIn(Show.Units));
        if (advice.SafePipe is { } safe)
        {
            lines.Row($"The pipe is then {Show.AtLeast(safe)} long.");
        }

        if (advice.DryNoteIn(Show.Units) is { } note)
        {
            lines.Paragraph(note);
        }

        if (advice.Lengthening is { } longer)
        {
            Write(lines, longer);
            return;
        }

        lines.Row(
            $"cut off in all          pipe then               note expected{(advice.Dry is null ? "" : ", joints home; dry, about")}"
        );
        foreach (var row in advice.Table.Rows)
        {
            lines.Row(
                Show.Text(
                    $"{Show.AtMost(row.Cut), -24}{Show.AtLeast(Pipe(row.Length, advice)), -24}{row.Note.Hertz:0.00} Hz, {Show.Cents(row.Cents)} ± {row.PlusMinusCents:0}"
                )
                    + (
                        advice.Dry is { } dry
                            ? $"; {Show.Hertz(row.Note * Cents.ToRatio(-dry.CentsToHome))}"
                            : ""
                    )
            );
        }
    }

    public static void Json(Utf8JsonWriter json, TrimAdvice advice)
    {
        json.Number("correctionCents", advice.Correction.MeanCents);
        json.Number("correctionStandardDeviationCents", advice.Correction.StandardDeviationCents);
        json.WriteString("explanation", advice.Verdict);
        if (advice.Dry is { } dry)
        {
            json.WriteStartObject("dryJoints");
            json.Number("stopShortMetres", dry.Fit.InAll.Meters);
            json.Number("centsToHome", dry.CentsToHome);
            json.Number("plusMinusCents", dry.PlusMinusCents);
            json.Number("trimToHz", dry.Target.Hertz);
            json.WriteEndObject();
        }

        json.Number("safeCutMetres", advice.Table.SafeCut?.Cut.Meters ?? double.NaN);
        json.Number("safePipeMetres", advice.SafePipe?.Meters ?? double.NaN);
        if (advice.Lengthening is { } longer)
        {
            json.WriteStartObject("lengthening");
            json.Number("pipeMetres", longer.Pipe?.Meters ?? double.NaN);
            json.Number("beyondEndMetres", longer.Beyond?.Meters ?? double.NaN);
            json.Number("ringLengthMetres", longer.RingLength.Meters);
            json.Number("ringInsideMetres", longer.RingInside?.Meters ?? double.NaN);
            json.WriteEndObject();
        }

        json.WriteStartArray("rows");
        foreach (var row in advice.Table.Rows)
        {
            json.WriteStartObject();
            json.Number("cutOffMetres", row.Cut.Meters);
            json.Number("pipeMetres", Pipe(row.Length, advice).Meters);
            json.Number("noteHz", row.Note.Hertz);
            json.Number("cents", row.Cents);
            json.Number("plusMinusCents", row.PlusMinusCents);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(StringBuilder lines, Lengthening longer)
    {
        lines.Row("To lower it, choose one of these:");
        if (longer.Pipe is { } pipe)
        {
            lines.Row($"  a new pipe of {Show.Both(pipe)} in place of the one to trim");
        }

        if (longer.Beyond is { } beyond)
        {
            lines.Row($"  {Show.Both(beyond)} more at the open end, of the same inside diameter");
        }

        if (longer.RingInside is { } ring)
        {
            lines.Row(
                $"  a ring {Show.Both(longer.RingLength)} long in the open end, {Show.Both(ring)} inside"
            );
        }

        if (longer is { Pipe: null, Beyond: null, RingInside: null })
        {
            lines.Row("  none was found; choose a higher note or other parts");
        }
    }

    private static Length Pipe(Length section, TrimAdvice advice) =>
        Length.FromMillimeters(section.Millimeters + advice.Hidden.Millimeters);
}
