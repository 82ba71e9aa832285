using AirColumn.Tests.Resonances;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Accuracy;

/// <summary>What was measured and published of real tubes, with what is not known of each.</summary>
internal static class MeasuredChapter
{
    public static Chapter Make()
    {
        var (cents, quality, level) = Trumpet();
        return new Chapter(
            "Against measurements",
            "These are real tubes. Nothing here was fitted. The two trumpets are of one class. Among eight trumpets of that class the "
                + "measured fourth mode had a standard deviation of 6 cents [freour2020]. The positions of the mouthpiece and of the tuning slide are not known. "
                + "Makers' note names are taken as ±20 cents, and the bores of their pipes, which were not given, as 40.4 mm. The "
                + "lips of a player cover a part of the mouth of a pan pipe, which a free end does not include; that explains the difference. All "
                + "errors are our value minus the published one. "
                + PublishedCoverage.Text,
            [
                new(
                    "Trumpet, modes 2 to 11",
                    "`trumpet-peaks.csv`, measured at 27 °C [freour2022]; bore of another trumpet, `trumpet-bore.csv`",
                    "230 to 1260 Hz",
                    "cent",
                    cents
                ),
                new("The same, quality factor, relative", "the same", "230 to 1260 Hz", "", quality),
                new("The same, height of the peaks", "the same", "modes 2 to 9", "dB", level),
                .. Ends(),
                new(
                    "Drone tubes, first resonance against the note played",
                    "1540 mm sounds A1, 970 mm F2: a maker's page, ±20 cents",
                    "55 and 87 Hz",
                    "cent",
                    [Drone(1540, "A1"), Drone(970, "F2")]
                ),
                new(
                    "Stopped pan pipes of 15.8 mm, blown end taken as free, against the notes played",
                    "154, 136, 120, 98, 87 mm sound C5, D5, E5, G5, A5: a maker's page, ±10 cents by the lengths",
                    "523 to 880 Hz",
                    "cent",
                    [
                        Stopped(154, "C5"),
                        Stopped(136, "D5"),
                        Stopped(120, "E5"),
                        Stopped(98, "G5"),
                        Stopped(87, "A5"),
                    ]
                ),
                .. PublishedCoverage.Rows(),
            ],
            []
        );
    }

    private static (double[] Cents, double[] Quality, double[] Level) Trumpet()
    {
        var found = MeasuredTrumpet.Column().FirstResonances(11);
        var measured = MeasuredTrumpet.Peaks();
        // Without the first, which is that of the tube as a whole and not played.
        int[] modes = [.. Enumerable.Range(1, Math.Min(found.Count, measured.Count) - 1)];
        return (
            [
                .. modes.Select(n =>
                    Cents.Between(Frequency.FromHertz(measured[n]["frequency_hz"]), found[n].Frequency)
                ),
            ],
            [.. modes.Select(n => found[n].QualityFactor / measured[n]["q"] - 1)],
            [
                .. modes
                    .Where(n => n < 9)
                    .Select(n => 20 * Math.Log10(found[n].Magnitude / 1e6 / measured[n]["peak_mpa"])),
            ]
        );
    }

    // End corrections over the diameter.
    private static IEnumerable<Quantity> Ends()
    {
        const double Radius = 0.0167;
        var wall = RadiationModel.Exact.Of(new OpenEnd(Metres(0.2 * Radius)), Radius);
        yield return new(
            "End correction of plastic pipes over their diameter, wall a fifth of the radius",
            "0.33 as the slope over five diameters of open pipes of 402 mm [boelkes2011]",
            "ka 0.1",
            "",
            [wall.At(0.1).EndCorrection / 2 - 0.33]
        );
        yield return new(
            "End correction of an open pipe over its diameter, at a wavelength of six diameters",
            "0.318, Bosanquet's, as [boelkes2011] gives it",
            "ka 0.52",
            "",
            [wall.At(Math.PI / 6).EndCorrection / 2 - 0.318]
        );
    }

    private static double Drone(double millimetres, string note) =>
        Cents.Between(
            Tuning.Concert.FrequencyOf(Pitch.Parse(note)),
            new Column(
                Bore.Build().Cylinder(Mm(40.4), Mm(millimetres)).OpenEnd(Mm(3)),
                Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
            )
                .FirstResonances(1)[0]
                .Frequency
        );

    private static double Stopped(double millimetres, string note) =>
        Cents.Between(
            Tuning.Concert.FrequencyOf(Pitch.Parse(note)),
            new Column(
                Bore.Build().Cylinder(Mm(15.8), Mm(millimetres)).ClosedEnd(),
                Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)),
                new ColumnOptions { BlownEnd = BlownEnd.FreeOpen(Mm(2.8)) }
            )
                .FirstResonances(1)[0]
                .Frequency
        );
}
