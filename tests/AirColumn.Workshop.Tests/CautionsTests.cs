using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn.Workshop.Stock;

namespace AirColumn.Workshop.Tests;

public class CautionsTests
{
    public static TheoryData<CautionStep> Steps => [.. Enum.GetValues<CautionStep>()];

    [Theory]
    [MemberData(nameof(Steps))]
    public void Every_step_has_one_short_caution(CautionStep step)
    {
        var caution = Assert.Single(Cautions.All, caution => caution.Step == step);
        Assert.Same(caution, Cautions.For(step));
        Assert.False(string.IsNullOrWhiteSpace(caution.Title));
        Assert.InRange(caution.Text.Length, 20, 450);
        Assert.EndsWith(".", caution.Text);
    }

    [Fact]
    public void Cautions_come_in_the_order_of_the_work() =>
        Assert.Equal(Enum.GetValues<CautionStep>(), Cautions.All.Select(caution => caution.Step));

    // The hazards that pipe and cement makers' guides name.
    [Theory]
    [InlineData(CautionStep.Pipe, "has been a drain")]
    [InlineData(CautionStep.Hearing, "hearing protection")]
    [InlineData(CautionStep.Drilling, "no gloves near the turning bit")]
    [InlineData(CautionStep.Cutting, "eye protection")]
    [InlineData(CautionStep.Dust, "dust mask")]
    [InlineData(CautionStep.Edges, "every edge that meets the mouth")]
    [InlineData(CautionStep.Heating, "no open flame")]
    [InlineData(CautionStep.Heating, "scald: wear gloves and long sleeves")]
    [InlineData(CautionStep.Heating, "never heat a tube with its ends sealed")]
    [InlineData(CautionStep.Heating, "any other plastic read its maker's data first")]
    [InlineData(CautionStep.SolventCement, "gloves and eye protection")]
    [InlineData(CautionStep.SolventCement, "flammable")]
    [InlineData(CautionStep.SolventCement, "ventilate")]
    [InlineData(CautionStep.Paint, "never in the bore or where lips go")]
    [InlineData(CautionStep.Playing, "Light-headed")]
    [InlineData(CautionStep.Hygiene, "Clean the mouth end")]
    public void Caution_names_its_hazard(CautionStep step, string words) =>
        Assert.Contains(words, Cautions.For(step).Text);

    // PVC: 80 to 85 °C, from near 140 °C on (pipe makers' guides), 225 to 275 °F for bends (a pipe maker's guide to bending). CPVC: Vicat
    // softening temperature of 110 °C or more for pipe (a maker's table by ISO 2507). ABS: glass transition, 100 to 115 °C (makers of the
    // plastic); carbon monoxide and hydrogen cyanide (NBSIR 85-3248). PP: melting point, memory.
    [Theory]
    [InlineData("PVC", "80-85 °C (176-185 °F)")]
    [InlineData("PVC-U", "107-135 °C (225-275 °F)")]
    [InlineData("PVC", "140 °C (285 °F)")]
    [InlineData("PVC", "hydrogen chloride")]
    [InlineData("CPVC", "110 °C (230 °F)")]
    [InlineData("ABS", "100-115 °C (212-239 °F)")]
    [InlineData("ABS", "hydrogen cyanide")]
    [InlineData("PP", "160 °C (320 °F)")]
    public void Plastic_has_its_own_limits(string material, string words) =>
        Assert.Contains(words, HeatLimits.Of(material)!.Text);

    [Fact]
    public void Fahrenheit_says_what_Celsius_says()
    {
        foreach (var limits in HeatLimits.All)
        {
            var pairs = Regex.Matches(limits.Text, @"([\d-]+) °C \(([\d-]+) °F\)");
            Assert.NotEmpty(pairs);
            foreach (Match pair in pairs)
            {
                var (celsius, fahrenheit) = (Degrees(pair.Groups[1].Value), Degrees(pair.Groups[2].Value));
                Assert.Equal(celsius.Length, fahrenheit.Length);
                // Whole degrees of one, rounded, are whole degrees of the other, or fives.
                Assert.All(
                    celsius.Zip(fahrenheit),
                    both => Assert.Equal(1.8 * both.First + 32, both.Second, 1.0)
                );
            }
        }

        static double[] Degrees(string text) =>
            [.. text.Split('-').Select(part => double.Parse(part, CultureInfo.InvariantCulture))];
    }

    [Fact]
    public void Every_material_of_the_catalogue_that_is_plastic_has_limits()
    {
        var materials = Catalogue.Standard.Pipes.Select(pipe => pipe.Material).Distinct().ToList();
        Assert.Contains("copper", materials);
        Assert.All(
            materials.Where(material => material != "copper"),
            material => Assert.NotNull(HeatLimits.Of(material))
        );
        Assert.Null(HeatLimits.Of("copper"));
        Assert.Null(HeatLimits.Of(null));
    }

    [Fact]
    public void Every_figure_has_its_source()
    {
        Assert.All(Cautions.All, caution => Assert.NotEmpty(caution.Source));
        Assert.All(HeatLimits.All, limits => Assert.NotEmpty(limits.Source));
        Assert.All(
            Cautions.All.Where(caution => caution.Text.Any(char.IsDigit)),
            caution => Assert.NotEqual("common practice", caution.Source)
        );
    }

    [Fact]
    public void Labels_codes_and_licensed_practice_come_first()
    {
        Assert.Contains("labels", Cautions.First, StringComparison.Ordinal);
        Assert.Contains("local codes", Cautions.First, StringComparison.Ordinal);
        Assert.Contains("licensed practice", Cautions.First, StringComparison.Ordinal);
    }

    [Fact]
    public void Unknown_step_is_refused_with_the_known_ones()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Cautions.For((CautionStep)99));
        Assert.StartsWith("step is 99; allowed are Pipe, Cutting,", error.Message, StringComparison.Ordinal);
    }
}
