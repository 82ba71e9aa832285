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
    [InlineData(CautionStep.Cutting, "eye protection")]
    [InlineData(CautionStep.Dust, "dust mask")]
    [InlineData(CautionStep.Edges, "every edge that meets the mouth")]
    [InlineData(CautionStep.Heating, "hydrogen chloride")]
    [InlineData(CautionStep.Heating, "no open flame")]
    [InlineData(CautionStep.Heating, "scald: wear gloves and long sleeves")]
    [InlineData(CautionStep.Heating, "never heat a tube with its ends sealed")]
    [InlineData(CautionStep.Heating, "80-85 °C (176-185 °F)")]
    [InlineData(CautionStep.Heating, "140 °C (285 °F)")]
    [InlineData(CautionStep.Heating, "any other plastic read its maker's data first")]
    [InlineData(CautionStep.SolventCement, "gloves and eye protection")]
    [InlineData(CautionStep.SolventCement, "flammable")]
    [InlineData(CautionStep.SolventCement, "ventilate")]
    [InlineData(CautionStep.Paint, "never in the bore or where lips go")]
    [InlineData(CautionStep.Playing, "Light-headed")]
    [InlineData(CautionStep.Hygiene, "Clean the mouth end")]
    public void Caution_names_its_hazard(CautionStep step, string words) =>
        Assert.Contains(words, Cautions.For(step).Text);

    [Fact]
    public void Labels_codes_and_licensed_practice_come_first()
    {
        Assert.Contains("labels", Cautions.First);
        Assert.Contains("local codes", Cautions.First);
        Assert.Contains("licensed practice", Cautions.First);
    }

    [Fact]
    public void Unknown_step_is_refused_with_the_known_ones()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Cautions.For((CautionStep)99));
        Assert.StartsWith("step is 99; allowed are Cutting, Dust,", error.Message);
    }
}
