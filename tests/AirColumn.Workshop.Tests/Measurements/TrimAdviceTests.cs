using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Tests.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Measurements;

public class TrimAdviceTests
{
    private static readonly TrimAdvice Advice = TrimAdvice.For(
        TubeBuilderTests.Stepped,
        Tuning.Concert.FrequencyOf(Pitch.Parse("D2")),
        Length.FromMillimeters(1120),
        TubeBuilderTests.Room,
        []
    );

    // What is cut off too far cannot be put back: neither unit may say more than was computed.
    [Fact]
    public void The_most_to_cut_off_is_rounded_down_in_either_unit()
    {
        var most = Advice.Table.SafeCut!.Value.Cut.Millimeters;
        var inches = new InchFraction((int)Math.Floor(most / 1.5875));
        var millimetres = FormattableString.Invariant($"{Math.Floor(most * 10) / 10:0.#} mm");
        Assert.StartsWith(
            $"Cut off no more than {millimetres} ({inches}), then play.",
            Advice.Verdict,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            $"Cut off no more than {millimetres}, ",
            Advice.VerdictIn(LengthUnits.Millimetres),
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            $"Cut off no more than {inches}, ",
            Advice.VerdictIn(LengthUnits.Inches),
            StringComparison.Ordinal
        );
        Assert.Matches(@"Expect about \d+ cents flat, ±\d+\.$", Advice.Verdict);
        Assert.Throws<ArgumentOutOfRangeException>(() => Advice.VerdictIn((LengthUnits)9));
    }
}
