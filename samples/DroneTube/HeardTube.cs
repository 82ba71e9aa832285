using System.Text;
using AirColumn;
using AirColumn.Recordings;
using AirColumn.Workshop.Measurements;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>What 'listen' has to say.</summary>
internal sealed record HeardTube(
    string Path,
    Take Take,
    SoundedNote Drone,
    Column Column,
    Tuning Tuning,
    int Before,
    int After,
    string? History
)
{
    // A note farther from each resonance belongs to none, cents.
    private const double Belongs = 100;
    public const int Resonances = 8;
    private const int PartialsShown = 8;

    // A recorder's clock may be off by 50 parts in a million: a note is known no better, cents.
    private const double Clock = 0.1;

    public required TrimAdvice Advice { get; init; }

    /// <summary>Before this recording was heard.</summary>
    public required TrimAdvice Expected { get; init; }

    /// <summary>Whether it was heard with its joints dry, and that makes a difference.</summary>
    public required bool IsDry { get; init; }

    private double Difference => Advice.DifferencesCents[^1];

    // That of the tube as it was heard.
    private Frequency Resonance => Drone.Fundamental * Cents.ToRatio(-Difference);

    // What was expected of the tube as it was heard, and what was heard less that, cents.
    private double DryCents => IsDry ? Advice.Dry?.CentsToHome ?? 0 : 0;

    private Frequency ExpectedNote => Expected.Table.Rows[0].Note * Cents.ToRatio(-DryCents);

    private double FromExpected => DryCents - Expected.Table.Rows[0].Cents;

    private double PlusMinus =>
        double.Hypot(Expected.Table.Rows[0].PlusMinusCents, IsDry ? Advice.Dry?.PlusMinusCents ?? 0 : 0);

    public string Text()
    {
        var lines = new StringBuilder();
        lines.Row(
            $"Heard      {Show.Text($"{Drone.Fundamental.Hertz:0.00} Hz ± {Math.Max(Clock, Drone.PlusMinusCents):0.0#} cents")}, {Drone.Nearest(Tuning)}"
        );
        lines.Row(
            Show.Text(
                $"           held {Drone.Duration.Seconds:0.0} s, drifting {Show.Cents(Drone.DriftCentsPerSecond)} a second, straying {Drone.SpreadCents:0.0} cents"
            )
        );
        lines.Row(
            $"Resonance  {Show.Hertz(Resonance)}, computed{(IsDry ? " with dry joints" : "")}; the note is {Show.Cents(Difference)} from it"
        );
        lines.Row(
            Show.Text(
                $"Expected   {ExpectedNote.Hertz:0.00} Hz ± {PlusMinus:0} cents (95 %), {Source()}; heard {Show.Cents(FromExpected)} from that"
            )
        );
        foreach (var (other, number, cents) in Others())
        {
            lines.Row(
                $"Also       {Show.Hertz(other.Fundamental)}, {other.Nearest(Tuning)}"
                    + (number > 0 ? $": {Show.Cents(cents)} from resonance {number}" : ": near no resonance")
            );
        }

        lines.Row(
            $"Partials   {string.Join(", ", Drone.Partials.Take(PartialsShown).Select(p => Show.Text($"{p.Number}: {p.Decibels:0} dB")))}"
        );
        lines.Row();
        AdviceText.Write(lines, Advice);
        if (History is not null)
        {
            lines.Row(
                $"{(After == 1 ? "One measurement of this tube is" : Show.Text($"{After} measurements of this tube are"))} kept in {History}."
            );
        }

        lines.Care();
        return lines.ToString();
    }

    public string Json() =>
        JsonText.Of(json =>
        {
            json.Number("heardHz", Drone.Fundamental.Hertz);
            json.Number("standardUncertaintyCents", Drone.StandardUncertaintyCents);
            json.Number("driftCentsPerSecond", Drone.DriftCentsPerSecond);
            json.Number("spreadCents", Drone.SpreadCents);
            json.Number("secondsHeld", Drone.Duration.Seconds);
            json.WriteStartArray("alternativesHz");
            foreach (var other in Drone.Alternatives)
            {
                json.WriteNumberValue(other.Hertz);
            }

            json.WriteEndArray();
            json.WriteString("pitch", Drone.Nearest(Tuning).Pitch.ToString());
            json.Number("cents", Drone.Nearest(Tuning).Cents);
            json.Number("resonanceHz", Resonance.Hertz);
            json.WriteString("joints", IsDry ? "dry" : "home");
            json.Number("differenceCents", Difference);
            json.Number("expectedHz", ExpectedNote.Hertz);
            json.Number("expectedPlusMinusCents", PlusMinus);
            json.WriteStartArray("otherNotes");
            foreach (var (other, number, cents) in Others())
            {
                json.WriteStartObject();
                json.Number("hz", other.Fundamental.Hertz);
                json.Number("resonance", number > 0 ? number : double.NaN);
                json.Number("differenceCents", number > 0 ? cents : double.NaN);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("partials");
            foreach (var partial in Drone.Partials)
            {
                json.WriteStartObject();
                json.WriteNumber("number", partial.Number);
                json.Number("hz", partial.Frequency.Hertz);
                json.Number("decibels", partial.Decibels);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteNumber("measurements", After);
            json.WriteBoolean("kept", History is not null);
            AdviceText.Json(json, Advice);
        });

    private string Source() =>
        Before == 0 ? "from common practice" : Show.Text($"from what was heard before ({Before})");

    // Notes of other pitches, each with the resonance it belongs to; 0 if none.
    private IEnumerable<(SoundedNote Note, int Number, double Cents)> Others()
    {
        var resonances = Column.FirstResonances(Resonances);
        foreach (var note in Take.Notes)
        {
            if (Math.Abs(Cents.Between(Drone.Fundamental, note.Fundamental)) < Belongs)
            {
                continue;
            }

            var nearest = resonances
                .Select((r, i) => (Number: i + 1, Cents: Cents.Between(r.Frequency, note.Fundamental)))
                .MinBy(pair => Math.Abs(pair.Cents));
            yield return Math.Abs(nearest.Cents) < Belongs
                ? (note, nearest.Number, nearest.Cents)
                : (note, 0, 0);
        }
    }
}
