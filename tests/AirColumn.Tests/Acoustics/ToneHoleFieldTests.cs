namespace AirColumn.Tests.Acoustics;

/// <summary>
/// The T of one hole, out of the whole column, against finite elements in three dimensions, without losses: tone-hole-field.csv (made by the
/// scripts in benchmarks/AirColumn.Accuracy/FieldSolutions) and hole-3d.csv, other finite elements of one hole.
/// </summary>
public class ToneHoleFieldTests
{
    // The shunt length is within 0.7 % up to ka = 0.2, and within 2.5 % up to ka = 0.5; the resistance within 2 and 3.5 %.
    private const double LowKa = 0.21;

    // Below it the sphere round the hole is too small to tell the resistance.
    private const double LeastKaOfResistance = 0.05;

    public static TheoryData<string, double, double, double, double, double, double, double> Holes { get; } =
        Read();

    [Theory]
    [MemberData(nameof(Holes))]
    public void The_T_of_a_hole_is_that_of_the_field(
        string state,
        double bore,
        double hole,
        double height,
        double wavenumber,
        double series,
        double shunt,
        double resistance
    )
    {
        var isOpen = state == "open";
        var (ta, z) = HoleOfColumn.T(bore, hole, height, wavenumber, isOpen);
        var isLow = wavenumber * bore < LowKa;
        Near.Relative(shunt, z.Imaginary / (wavenumber * hole), isLow ? 0.007 : 0.025);
        Near.Absolute(series, ta, 0.03);
        if (isOpen && wavenumber * bore > LeastKaOfResistance)
        {
            Near.Relative(resistance, z.Real, isLow ? 0.02 : 0.035);
        }
    }

    private static TheoryData<string, double, double, double, double, double, double, double> Read()
    {
        var data = new TheoryData<string, double, double, double, double, double, double, double>();
        foreach (var row in ReferenceTable.Read("tone-hole-field.csv").Rows)
        {
            // A bore of 10 mm.
            const double A = 0.01;
            data.Add(
                row.Text("state"),
                A,
                A * row["delta"],
                A * row["t_over_a"],
                row["ka"] / A,
                row["series"],
                row["shunt"],
                row["resistance"]
            );
        }

        foreach (var row in ReferenceTable.Read("hole-3d.csv").Rows)
        {
            data.Add(
                row.Text("state"),
                row["a_mm"] / 1000,
                row["b_mm"] / 1000,
                row["t_mm"] / 1000,
                2 * Math.PI * row["frequency_hz"] / 343.37,
                row["series"],
                row["shunt"],
                row["resistance"]
            );
        }

        return data;
    }
}
