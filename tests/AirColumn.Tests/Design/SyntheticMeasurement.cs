using System.Numerics;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace AirColumn.Tests.Design;

/// <summary>
/// A measurement that is made, not taken: a drone tube or a horn whose wall is off by a smooth random function, in air off by some tenths of a
/// kelvin, its reflectance with noise of 1 percent. The truth is computed with finer cones than are fitted, and where asked with radial modes,
/// the fit by curved wave fronts.
/// </summary>
internal sealed class SyntheticMeasurement
{
    private const int Waves = 10;
    private const double Noise = 0.01; // of the reflectance, both parts together

    private readonly double length;
    private readonly double inlet; // mm
    private readonly bool isHorn;
    private readonly double deviation; // mm
    private readonly (double Size, double Phase, double Length)[] waves;

    public SyntheticMeasurement(int seed, bool isHorn, double highestHertz, Wavefronts truth)
    {
        this.isHorn = isHorn;
        var random = new Random(seed);
        var normal = new Normal(0, 1, random);
        length = isHorn ? 0.9 + 0.5 * random.NextDouble() : 1 + 0.6 * random.NextDouble();
        inlet = isHorn ? 11 + 2 * random.NextDouble() : 30 + 10 * random.NextDouble();
        deviation = isHorn ? 0.15 : 0.3;
        waves =
        [
            .. Enumerable
                .Range(0, Waves)
                .Select(_ =>
                    (normal.Sample(), 2 * Math.PI * random.NextDouble(), 0.15 + 0.6 * random.NextDouble())
                ),
        ];
        TrueKelvins = 0.3 * normal.Sample();
        var column = new Column(
            Cones(0.013, x => Believed(x) + Off(x)),
            Room(TrueKelvins),
            new ColumnOptions { Wavefronts = truth, Modes = truth == Wavefronts.Multimodal ? 4 : null }
        );
        Column = new Column(
            Cones(0.02, Believed),
            Room(0),
            new ColumnOptions { Wavefronts = Wavefronts.Curved }
        );
        var high = Math.Min(
            highestHertz,
            0.95 * Math.Min(Column.HighestFrequency.Hertz, column.HighestFrequency.Hertz)
        );
        var hertz = FrequencyGrid.Linear(20, high, (int)(high / 10)).Hertz.ToArray();
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        column.Impedance(hertz, real, imaginary);
        var reference = Column.CharacteristicImpedance;
        var part = Noise / Math.Sqrt(2);
        Measured = MeasuredReflectance.OfReflectance(
            hertz,
            [
                .. hertz.Select(
                    (_, i) =>
                        Reflectance(new Complex(real[i], imaginary[i]), reference)
                        + part * new Complex(normal.Sample(), normal.Sample())
                ),
            ],
            reference,
            part
        );
    }

    /// <summary>As it is believed to be.</summary>
    public Column Column { get; }

    public MeasuredReflectance Measured { get; }

    /// <summary>Of the air, over what is believed.</summary>
    public double TrueKelvins { get; }

    public BoreFitSolution Fit() =>
        BoreFit.Solve(
            Column,
            Measured,
            [Tolerance.Temperature(TemperatureDelta.FromKelvins(0.6)) with { IsNormal = true }],
            BoreProfile.OfJoints(Column.Bore, Length.FromMillimeters(deviation), Length.FromMillimeters(80))
        );

    /// <summary>Of the radii, mm: root of the mean square, and how many lie in the 95 percent range.</summary>
    public (double RootMeanSquare, int Inside, int Count) Errors(BoreFitSolution solution)
    {
        var (sum, inside, count, x) = (0.0, 0, Column.Bore.Sections.Count + 1, 0.0);
        for (var i = 0; i < count; i++)
        {
            var fitted = solution.Values[i];
            var error = 1000 * fitted.Value - (Believed(x) + Off(x));
            sum += error * error / 4;
            inside += Math.Abs(error) <= 1000 * fitted.PlusMinus ? 1 : 0;
            x += i + 1 < count ? Column.Bore.Sections[i].Length.Meters : 0;
        }

        return (Math.Sqrt(sum / count), inside, count);
    }

    private static Complex Reflectance(Complex impedance, double reference) =>
        (impedance - reference) / (impedance + reference);

    private static Air Room(double kelvins) =>
        Air.At(Temperature.FromDegreesCelsius(20 + kelvins), RelativeHumidity.FromPercent(50));

    // Diameters in mm at a distance from the blown end.
    private double Believed(double x) =>
        isHorn ? inlet + (60 - inlet) * Math.Pow(x / length, 5) : inlet * (1 + 0.6 * x / length);

    private double Off(double x) =>
        deviation
        * Math.Sqrt(2.0 / Waves)
        * waves.Sum(wave => wave.Size * Math.Cos(2 * Math.PI * x / wave.Length + wave.Phase));

    private Bore Cones(double longest, Func<double, double> diameter)
    {
        var count = (int)Math.Round(length / longest);
        return new Bore(
            Enumerable
                .Range(0, count)
                .Select(i => new ConeSection(
                    Length.FromMillimeters(diameter(length * i / count)),
                    Length.FromMillimeters(diameter(length * (i + 1) / count)),
                    Length.FromMeters(length / count)
                )),
            new OpenEnd(Length.FromMillimeters(3))
        );
    }
}
