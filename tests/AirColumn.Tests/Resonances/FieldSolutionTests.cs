using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Pitches;
using AirColumn.Resonances;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>
/// Against axisymmetric field solutions (finite elements with absorbing layers; each table's header states model and
/// discretisation error). Rows BLinner lose energy at the bore only, as the one-dimensional theory does.
/// </summary>
public class FieldSolutionTests
{
    public static TheoryData<string, string> Tubes =>
        new()
        {
            { "field-cylinder.csv", "lossless" },
            { "field-cylinder.csv", "BLinner" },
            { "field-cylinder-baffle.csv", "lossless" },
            { "field-cylinder-baffle.csv", "BLinner" },
        };

    [Theory]
    [MemberData(nameof(Tubes))]
    public void First_eight_peaks_of_a_plain_tube(string table, string model)
    {
        var end = table == "field-cylinder.csv" ? (BoreEnd)new OpenEnd(Mm(3.7)) : new BaffledEnd();
        var options = model == "lossless" ? Lossless : new ColumnOptions();
        var column = Column(new CylinderSection(Mm(40.9), Mm(1300)), end, options);
        var found = column.FirstResonances(8);
        var rows = ReferenceTable
            .Read(table)
            .Rows.Where(r => r.Text("kind") == "peak" && r.Text("model") == model);

        Assert.Equal(8, found.Count);
        foreach (var (row, resonance) in rows.Zip(found))
        {
            // 0.3 cent and 0.2 dB: the plane-wave theory's own error here, not the table's (below 0.001 cent).
            Near.Absolute(
                0,
                Cents.Between(UnitsNet.Frequency.FromHertz(row["f_Hz"]), resonance.Frequency),
                0.3,
                row
            );
            Near.Absolute(0, 20 * Math.Log10(resonance.Magnitude / row["absZ"]), 0.2, row);
            Near.Relative(row["pole_re_Hz"], resonance.Pole.Real, 2e-4, row);
            Near.Relative(row["pole_im_Hz"], resonance.Pole.Imaginary, 0.03, row);
        }
    }
}
