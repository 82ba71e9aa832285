using System.Text.Json;
using AirColumn.Workshop;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>A plan for other programs: names carry the unit, lengths also come in sixteenths of an inch.</summary>
internal static class PlanJson
{
    public static string Of(TubePlan plan)
    {
        if (!plan.IsSolved)
        {
            throw new FailureException(plan.Explanation);
        }

        return JsonText.Of(json =>
        {
            json.WriteString("note", plan.Note.ToString());
            json.Number("targetHz", plan.Target.Hertz);
            json.Number("referenceHz", plan.Tuning.Reference.Hertz);
            json.Number("speedOfSoundMetresPerSecond", plan.Air.SpeedOfSound.MetersPerSecond);
            Cut(json, plan.Exact);
            Cut(json, "wholeMillimetre", plan.WholeMillimetre);
            Cut(json, "wholeSixteenthInch", plan.WholeSixteenth);
            json.Number("centsPerMillimetre", plan.Trimming.CentsPerMillimetre);
            Trim(json, plan.Trimming);
            Overblown(json, plan.Overblown);
            Rule(json, plan.QuarterWave);
            json.Texts("warnings", plan.Warnings);
            Care(json);
        });
    }

    private static void Length(Utf8JsonWriter json, string name, Length length)
    {
        json.Number($"{name}Metres", length.Meters);
        json.WriteString($"{name}Inches", Show.Inches(length));
    }

    private static void Cut(Utf8JsonWriter json, string name, TubeCut cut)
    {
        json.WriteStartObject(name);
        Cut(json, cut);
        json.WriteEndObject();
    }

    private static void Cut(Utf8JsonWriter json, TubeCut cut)
    {
        Length(json, "totalLength", cut.TotalLength);
        Length(json, "pipeLength", cut.PipeLength);
        json.Number("firstResonanceHz", cut.FirstResonance.Hertz);
        json.Number("cents", cut.Cents);
    }

    private static void Trim(Utf8JsonWriter json, Trimming trimming)
    {
        json.WriteStartObject("trimming");
        json.Number("bandCents", trimming.BandCents);
        json.Number("measuringToleranceMetres", trimming.MeasuringTolerance.Meters);
        json.WriteString("measuringToleranceInches", Show.DecimalInches(trimming.MeasuringTolerance));
        json.Number("allowanceMetres", trimming.Allowance.Meters);
        json.WriteString("allowanceInches", InchFraction.AtLeast(trimming.Allowance).ToString());
        Cut(json, "firstCut", trimming.FirstCut);
        Cut(json, "firstCutSixteenthInch", trimming.FirstCutInches);
        json.WriteEndObject();
    }

    private static void Overblown(Utf8JsonWriter json, IReadOnlyList<OverblownNote> notes)
    {
        json.WriteStartArray("overblown");
        foreach (var note in notes)
        {
            json.WriteStartObject();
            json.WriteNumber("resonance", note.Resonance);
            json.Number("frequencyHz", note.Frequency.Hertz);
            json.WriteString("pitch", note.Nearest.Pitch.ToString());
            json.Number("cents", note.Nearest.Cents);
            json.Number("centsAboveFirst", note.CentsAboveFirst);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Rule(Utf8JsonWriter json, QuarterWaveRule rule)
    {
        json.WriteStartObject("quarterWaveRule");
        Length(json, "totalLength", rule.TotalLength);
        Length(json, "difference", rule.Difference);
        json.Number("cents", rule.Cut?.Cents ?? double.NaN);
        json.WriteEndObject();
    }

    private static void Care(Utf8JsonWriter json)
    {
        json.WriteString("precedence", Cautions.First);
        json.WriteStartArray("cautions");
        foreach (var caution in Cautions.All)
        {
            json.WriteStartObject();
            json.WriteString("step", caution.Title);
            json.WriteString(
                "text",
                caution.Step == CautionStep.Heating
                    ? string.Join(' ', HeatLimits.All.Select(limits => limits.Text).Prepend(caution.Text))
                    : caution.Text
            );
            json.WriteString("source", caution.Source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
