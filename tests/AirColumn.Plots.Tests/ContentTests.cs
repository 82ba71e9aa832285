using UnitsNet;
using static AirColumn.Plots.Tests.Columns;

namespace AirColumn.Plots.Tests;

/// <summary>Pictures hold what they are to show.</summary>
public class ContentTests
{
    private const string Vermilion = "#D55E00"; // of marks
    private const string Green = "#009E73"; // of notes

    // wong2011, figure 2.
    private static readonly string[] Published =
    [
        "#000000",
        "#E69F00",
        "#56B4E9",
        "#009E73",
        "#F0E442",
        "#0072B2",
        "#D55E00",
        "#CC79A7",
    ];

    [Fact]
    public void Impedance_marks_every_resonance_with_its_cents_and_every_note_with_its_name()
    {
        var drawn = new Drawn(ImpedancePicture.Of(Horn));
        var resonances = Horn.FirstResonances(8);
        Assert.Equal(8, Marks(drawn));
        foreach (var resonance in resonances)
        {
            var reading = resonance.Nearest(Tuning.Concert);
            Assert.Contains(reading.Pitch.ToString(), drawn.Texts);
            Assert.Contains(Drawing.Numbers.Cents(reading.Cents), drawn.Texts);
        }

        Assert.Contains("Frequency, Hz", drawn.Texts);
        Assert.Contains("|Z|, MPa·s/m³", drawn.Texts);
        Assert.Contains("Phase of Z, degrees", drawn.Texts);
        // A line in the magnitude and one in the phase for each note.
        Assert.Equal(16, drawn.Named("path").Count(p => (string?)p.Attribute("fill") == Green));
    }

    [Fact]
    public void Curves_are_compared_by_name()
    {
        var grid = FrequencyGrid.Linear(50, 500, 200);
        var drawn = new Drawn(
            ImpedancePicture.Compare(("horn", Horn.Impedance(grid)), ("flute", Flute.Impedance(grid)))
        );
        Assert.Contains("horn", drawn.Texts);
        Assert.Contains("flute", drawn.Texts);
        Assert.Contains("Level over the characteristic impedance, dB", drawn.Texts);
        Assert.Throws<ArgumentException>(() => ImpedancePicture.Compare());
        Assert.Throws<ArgumentException>(() => ImpedancePicture.Compare(("", Horn.Impedance(grid))));
    }

    [Fact]
    public void A_view_chooses_range_notes_and_phase()
    {
        var view = new ImpedanceView
        {
            From = Frequency.FromHertz(50),
            To = Frequency.FromHertz(500),
            Notes = [Pitch.Parse("C2"), Pitch.Parse("C4"), Pitch.Parse("C7")],
            HasPhase = false,
        };
        var drawn = new Drawn(ImpedancePicture.Of(Horn, view));
        Assert.Equal(3, Marks(drawn));
        Assert.Contains("C2", drawn.Texts);
        Assert.Contains("C4", drawn.Texts);
        Assert.DoesNotContain("C7", drawn.Texts); // 2093 Hz
        Assert.DoesNotContain(drawn.Texts, text => text.StartsWith("Phase", StringComparison.Ordinal));
        Assert.Equal(2, drawn.Named("path").Count(p => (string?)p.Attribute("fill") == Green));
    }

    [Fact]
    public void A_flute_has_its_marks_at_the_minima()
    {
        var drawn = new Drawn(ImpedancePicture.Of(Flute));
        var first = Flute.FirstResonances(1)[0];
        Assert.Equal(8, Marks(drawn));
        Assert.Contains(Drawing.Numbers.Cents(first.Nearest(Tuning.Concert).Cents), drawn.Texts);
        // Im Z rises through zero there, so that |Z| is larger to both sides.
        var there = Flute.ImpedanceAt(first.Frequency).Magnitude;
        Assert.True(there < Flute.ImpedanceAt(0.9 * first.Frequency).Magnitude);
    }

    [Fact]
    public void Tuning_has_a_row_for_each_resonance()
    {
        var drawn = new Drawn(Pictures["tuning"]);
        Assert.Equal(5, Marks(drawn));
        foreach (var resonance in Horn.FirstResonances(5))
        {
            var reading = resonance.Nearest(Tuning.Concert);
            Assert.Contains(Drawing.Numbers.Fixed(resonance.Frequency.Hertz, 2) + " Hz", drawn.Texts);
            Assert.Contains(reading.Pitch.ToString(), drawn.Texts);
            Assert.Contains(Drawing.Numbers.Cents(reading.Cents), drawn.Texts);
        }

        Assert.Contains("Distance from the note, cents", drawn.Texts);
    }

    [Fact]
    public void Another_tuning_names_other_deviations()
    {
        var baroque = Tuning.Concert.WithReference(Frequency.FromHertz(415));
        var drawn = new Drawn(TuningPicture.Of(Horn.FirstResonances(1), baroque));
        Assert.Contains("A4 = 415 Hz, equal temperament", drawn.Texts);
        Assert.Contains(
            Drawing.Numbers.Cents(Horn.FirstResonances(1)[0].Nearest(baroque).Cents),
            drawn.Texts
        );
    }

    [Fact]
    public void How_sure_is_said_with_each_resonance()
    {
        var drawn = new Drawn(Pictures["sure"]);
        Assert.Equal(3, Marks(drawn));
        foreach (var budget in Budgets)
        {
            Assert.Contains(
                drawn.Texts,
                text =>
                    text.EndsWith(
                        $"± {Drawing.Numbers.Fixed(budget.PlusMinusCents, 1)}",
                        StringComparison.Ordinal
                    )
            );
        }
    }

    [Fact]
    public void Shares_of_a_study_are_named_the_largest_first()
    {
        var drawn = new Drawn(Pictures["shares"]);
        var (first, second) = (Share(Study[0]), Share(Study[1]));
        Assert.Contains(first, drawn.Texts);
        Assert.Contains(second, drawn.Texts);
        Assert.Equal(
            $"What moves the pitch, cents: length, mm {first}; diameter, mm {second}.",
            Pictures["shares"].Description
        );

        static string Share(StudyQuantity parameter) =>
            $"{Drawing.Numbers.Fixed(100 * AirColumn.Studies.StudyShares.FirstOrder(parameter.Values, Study[2].Values), 0)} %";
    }

    // Smallest at the smallest diameter is only one: 0 cents at 30 mm; from there a millimetre wider is a cent less. The item without a
    // diameter is no part of it.
    [Fact]
    public void A_front_has_what_is_not_worse_in_both()
    {
        Assert.Equal(
            "pitch, cents against diameter, mm: 399 items, 20 of them on the front, from 30 and 0 to 49 and −19.",
            Pictures["front"].Description
        );
        Assert.Contains("399 items; from −19, light, to 32.91, dark", new Drawn(Pictures["map"]).Texts);
    }

    [Fact]
    public void What_cannot_be_a_picture_of_a_study_is_said()
    {
        var few = new StudyQuantity("few", [1, 2]);
        Assert.StartsWith(
            "There are 2 values across and 400 up; give the same number of each.",
            Assert.Throws<ArgumentException>(() => StudyPicture.Front(few, Study[0])).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "No share can be told; give at least 1 parameter, 32 items and an answer that varies.",
            Assert.Throws<ArgumentException>(() => StudyPicture.Shares(few, [few])).Message,
            StringComparison.Ordinal
        );
        var none = new StudyQuantity("none", [double.NaN]);
        Assert.StartsWith(
            "No item has a number of each quantity.",
            Assert.Throws<ArgumentException>(() => StudyPicture.Map(none, none, none)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_budget_names_each_contribution_and_its_share()
    {
        var drawn = new Drawn(Pictures["budget"]);
        foreach (var contribution in Budgets[0].Contributions)
        {
            Assert.Contains(contribution.Tolerance.ToString(), drawn.Texts);
            Assert.Contains(
                drawn.Texts,
                text =>
                    text.EndsWith(
                        $"{Drawing.Numbers.Fixed(100 * contribution.Share, 1)} %",
                        StringComparison.Ordinal
                    )
            );
        }

        Assert.Equal(2, drawn.Named("path").Count(p => (string?)p.Attribute("fill") == "#0072B2"));
    }

    [Fact]
    public void A_bore_says_its_measures_and_shows_its_holes()
    {
        Assert.Equal(
            "Side view of a bore: 1130 mm long, 31 to 75 mm wide inside, open end",
            Pictures["bore"].Description
        );
        Assert.Equal(
            "Side view of a bore: 547 mm long, 19 mm wide inside, open end, 2 holes",
            Pictures["holes"].Description
        );
        Assert.Equal(
            "Side view of a bore: 300 mm long, 20 mm wide inside, closed end, 1 branch",
            Pictures["branch"].Description
        );
        // Air in the bore, and in each of its holes.
        Assert.Equal(
            1,
            new Drawn(Pictures["bore"]).Named("path").Count(p => (string?)p.Attribute("fill") == "#D6E8E6")
        );
        Assert.Equal(
            3,
            new Drawn(Pictures["holes"]).Named("path").Count(p => (string?)p.Attribute("fill") == "#D6E8E6")
        );
    }

    [Fact]
    public void A_standing_wave_says_how_large_it_is_and_in_what()
    {
        var drawn = new Drawn(Pictures["wave"]);
        Assert.Contains("Standing wave at 236.00 Hz", drawn.Texts);
        Assert.Contains(
            drawn.Texts,
            text =>
                text.Contains("MPa and", StringComparison.Ordinal)
                && text.Contains("m³/s for a flow of 1 m³/s", StringComparison.Ordinal)
        );
        Assert.Contains("pressure", drawn.Texts);
        Assert.Contains("flow", drawn.Texts);
        var blown = new Drawn(StandingWavePicture.Of(Flute, Frequency.FromHertz(300)));
        Assert.Contains(
            blown.Texts,
            text => text.EndsWith("for 1 Pa outside the blown end", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Colours_are_those_published_or_tints_of_ink()
    {
        var used = Pictures
            .Values.SelectMany(picture => new Drawn(picture).Colours)
            .Distinct()
            .Order()
            .ToList();
        Assert.Equal(
            ["#0B5A5A", "#1C2523", "#4D5A56", "#A33B0A", "#C3CAC3", "#D6E8E6", "white"],
            used.Except(Published)
        );
        Assert.True(used.Intersect(Published).Count() == 3, string.Join(' ', used));
    }

    // Marks are the vermilion shapes that are no text.
    private static int Marks(Drawn drawn) =>
        drawn
            .Root.Descendants()
            .Count(e => e.Name.LocalName != "text" && (string?)e.Attribute("fill") == Vermilion);
}
