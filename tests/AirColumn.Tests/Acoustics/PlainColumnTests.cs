using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class PlainColumnTests
{
    private static readonly PlainColumn Plain = new(343.37, 1.2045, 1.814e-5, 0.0258, 1006, 1.4019);

    // The whole chain against another implementation, on bores of many cylinders of one radius: no steps, whose air mass
    // the plain version leaves out.
    [Theory]
    [InlineData(0.002)]
    [InlineData(0.02)]
    [InlineData(0.05)]
    public void Chain_of_cylinders_agrees_with_the_textbook_version(double radius)
    {
        var lengths = Enumerable.Range(1, 12).Select(i => 0.01 * i).ToList();
        var bore = new Bore(
            lengths.Select(length => new CylinderSection(Metres(2 * radius), Metres(length))),
            new ClosedEnd()
        );
        var column = new AirColumn.Column(bore, TableAir);
        foreach (var hertz in new[] { 25.0, 91, 333, 1210, 1999 })
        {
            // 1 − F of the plain version loses three digits at the narrowest bore and the lowest frequency.
            Near.Relative(
                Plain.ClosedImpedance(hertz, [.. lengths.Select(length => (radius, length))]),
                column.AnswerAt(2 * Math.PI * hertz),
                2e-12,
                hertz
            );
        }
    }
}
