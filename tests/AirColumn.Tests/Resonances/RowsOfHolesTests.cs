using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>
/// Rows of many open holes: in the stop band of the row the state grows by orders from hole to hole, and what lies before it is a small
/// part of that. The list is held against a scan of |Z|, each frequency by itself.
/// </summary>
public class RowsOfHolesTests
{
    [Theory]
    [InlineData(12, 16, 10, 16)]
    [InlineData(12, 24, 10, 16)]
    [InlineData(15, 24, 8, 16)]
    [InlineData(20, 80, 4, 9.5)]
    public void None_is_missed_or_made_up(double bore, int holes, double diameter, double apart)
    {
        var builder = Bore.Build().Cylinder(Mm(bore), Mm(300 + apart * holes + 20));
        for (var i = 0; i < holes; i++)
        {
            builder = builder.Hole(Mm(300 + apart * i), Mm(diameter), Mm(3));
        }

        var column = new Column(builder.OpenEnd(Mm(1)), TableAir);
        const double Top = 2000;
        const double Step = 0.5;
        var seen = new List<double>();
        var (before, last) = (0.0, 0.0);
        for (var f = 20.0; f < Top; f += Step)
        {
            var now = column.AnswerAt(2 * Math.PI * f).Magnitude;
            if (last > before && last >= now)
            {
                seen.Add(f - Step);
            }

            (before, last) = (last, now);
        }

        var found = column.Resonances(Frequency.FromHertz(Top));
        Assert.Equal(seen.Count, found.Count);
        Assert.All(seen.Zip(found), pair => Near.Absolute(pair.First, pair.Second.Frequency.Hertz, Step));
    }
}
