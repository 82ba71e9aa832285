using System.Text.Json;
using AirColumn.Workshop;
using AirColumn.Workshop.Tubes;
using Shared;

namespace DroneTube;

/// <summary>A plan from a parts file as JSON.</summary>
internal static class BuildJson
{
    public static void Write(Utf8JsonWriter json, TubeBuild build)
    {
        json.WriteString("note", build.Note.ToString());
        json.Number("frequencyHz", build.Tuning.FrequencyOf(build.Note).Hertz);
        json.WriteBoolean("solved", build.IsSolved);
        json.WriteString("explanation", build.Explanation);
        json.Texts("warnings", build.Warnings);
        if (!build.IsSolved)
        {
            return;
        }

        Cut(json, "onTheNote", build.Exact, InchFraction.Nearest(build.Exact.Cut));
        Cut(json, "wholeMillimetre", build.WholeMillimetre, null);
        Cut(json, "wholeSixteenthInch", build.WholeSixteenth, InchFraction.Nearest(build.WholeSixteenth.Cut));
        Cut(json, "cutFirst", build.FirstCut, null);
        Cut(json, "cutFirstSixteenthInch", build.FirstCutInches, build.FirstLength.Inches);
        json.Number("totalLengthMetres", build.Exact.Tube.Bore.Length.Meters);
        json.Number("resonancePlusMinusCents", build.Budget.PlusMinusCents);
        json.Number("playedNoteHz", build.Played.Frequency.Hertz);
        json.Number("playedPlusMinusCents", build.Played.PlusMinusCents);
        json.WriteStartArray("overblown");
        foreach (var note in build.Overblown)
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
        Holes(json, build);
    }

    // Only where there are holes to open.
    private static void Holes(Utf8JsonWriter json, TubeBuild build)
    {
        var notes = FingeredNote.Of(build.Exact!, build.Tuning);
        if (notes.Count == 0)
        {
            return;
        }

        json.WriteStartArray("fingered");
        foreach (var note in notes)
        {
            json.WriteStartObject();
            json.WriteString("fingering", note.Fingering.ToString());
            json.Texts("open", note.Opened.Select(hole => hole.Name));
            json.Number("frequencyHz", note.Frequency.Hertz);
            json.WriteString("pitch", note.Nearest.Pitch.ToString());
            json.Number("cents", note.Nearest.Cents);
            json.Number("centsAboveDrone", note.CentsAboveDrone);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // A first cut in whole millimetres has no inches: rounded once more it might fall below the safe one.
    private static void Cut(Utf8JsonWriter json, string name, BuiltTube built, InchFraction? inches)
    {
        json.WriteStartObject(name);
        json.Number("cutMetres", built.Cut.Meters);
        if (inches is { } sixteenths)
        {
            json.WriteString("cutInches", sixteenths.ToString());
        }

        json.Number("firstResonanceHz", built.FirstResonance.Hertz);
        json.Number("cents", built.Cents);
        json.WriteEndObject();
    }
}
