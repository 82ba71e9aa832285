using AirColumn.Tests.Resonances;
using AirColumn.Workshop.Instruments;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Accuracy;

/// <summary>How often a range that the library states holds what was published, with the tolerances of what the publication leaves open.</summary>
internal static class PublishedCoverage
{
    /// <summary>The tolerances, and each published value that lies outside its range.</summary>
    public static string Text
    {
        get
        {
            var outside = All().SelectMany(group => group.Values).Where(value => !value.IsHeld).ToList();
            return "Where the library states a range, the last rows count the published values outside it. For what the publications leave open, we chose tolerances: "
                + "temperatures ± 5 K where none is given and ± 0.5 K where one is given, bores of drone tubes ± 5 mm and their lengths ± 5 mm, and the trumpet's tuning slide "
                + "moved 1 cm either way, ± 20 mm of tube (from memory). Outside their range are: "
                + (
                    outside.Count == 0
                        ? "none"
                        : string.Join(
                            ", ",
                            outside.Select(value => $"{value.Name} ({value.Off:+0;−0} cents)")
                        )
                )
                + ". No range is stated for notes of reeds and for end corrections.";
        }
    }

    public static IEnumerable<Quantity> Rows() =>
        All()
            .Select(group => new Quantity(
                $"{group.Name}: share outside the range stated",
                group.Source,
                group.Values.Count == 1 ? "1 value" : $"{group.Values.Count} values",
                "%",
                [group.Values.Average(value => value.IsHeld ? 0.0 : 100)]
            ))
            .Append(
                new Quantity(
                    "All of these: share outside the range stated",
                    "the four rows above",
                    $"{All().Sum(group => group.Values.Count)} values",
                    "%",
                    [All().SelectMany(group => group.Values).Average(value => value.IsHeld ? 0.0 : 100)]
                )
            );

    private static IEnumerable<(string Name, string Source, IReadOnlyList<Published> Values)> All()
    {
        yield return (
            "Note of a drone tube, `PlayingCorrection.LipsInRoomAir`",
            "the two drone tubes above",
            [Drone(1540, "A1"), Drone(970, "F2")]
        );
        yield return (
            "Played note above its peak, `PlayingCorrection.LipsInBreath`",
            "ten trombone players, 19 cents above the peak measured while they play [boutin2015]",
            [
                Published.Of(
                    "trombone",
                    19 - PlayingCorrection.LipsInBreath.MeanCents,
                    1.96 * PlayingCorrection.LipsInBreath.StandardDeviationCents
                ),
            ]
        );
        yield return (
            "Length of a pan pipe, `PanPipe`",
            "the five pan pipes above",
            [Pipe(154, "C5"), Pipe(136, "D5"), Pipe(120, "E5"), Pipe(98, "G5"), Pipe(87, "A5")]
        );
        yield return ("Modes 2 to 11 of a trumpet, `Budgets`", "the trumpets above", [.. Trumpet()]);
    }

    private static Published Drone(double millimetres, string note)
    {
        var column = new Column(
            Bore.Build().Cylinder(Mm(40.4), Mm(millimetres)).OpenEnd(Mm(3)),
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
        );
        var budget = column.Budgets(
            column.FirstResonances(1),
            [
                new(ColumnParameter.Diameter(0), Mm(5)),
                new(ColumnParameter.SectionLength(0), Mm(5)),
                Tolerance.Temperature(TemperatureDelta.FromKelvins(5)),
            ]
        )[0];
        var played = PlayingCorrection.LipsInRoomAir.Of(budget);
        var told = Tuning.Concert.FrequencyOf(AirColumn.Pitch.Parse(note));
        return Published.Of(
            $"drone of {millimetres} mm",
            Cents.Between(played.Frequency, told),
            played.PlusMinusCents
        );
    }

    // As cents of the length, at 20 °C.
    private static Published Pipe(double millimetres, string note)
    {
        var pipe = PanPipe.For(
            AirColumn.Pitch.Parse(note),
            Tuning.Concert,
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)),
            Mm(15.8),
            Mm(10)
        );
        var unit = 1200 / Math.Log(2) / millimetres;
        return Published.Of(
            $"pan pipe of {millimetres} mm",
            unit * (pipe.Air.Millimeters - millimetres),
            unit * pipe.PlusMinus.Millimeters
        );
    }

    private static IEnumerable<Published> Trumpet()
    {
        var column = MeasuredTrumpet.Column();
        var resonances = column.FirstResonances(11);
        var slide = column.Bore.Sections.Index().MaxBy(section => section.Item.Length).Index;
        var budgets = column.Budgets(
            resonances,
            [
                new(ColumnParameter.SectionLength(slide), Mm(20)),
                Tolerance.Temperature(TemperatureDelta.FromKelvins(0.5)),
            ]
        );
        var measured = MeasuredTrumpet.Peaks();
        for (var n = 1; n < measured.Count; n++)
        {
            yield return Published.Of(
                $"mode {n + 1} of the trumpet",
                Cents.Between(resonances[n].Frequency, Frequency.FromHertz(measured[n]["frequency_hz"])),
                budgets[n].PlusMinusCents
            );
        }
    }

    /// <param name="Name">What it is of.</param>
    /// <param name="Off">The published value minus the middle of the range, cents.</param>
    /// <param name="IsHeld">Whether it lies in the range.</param>
    private sealed record Published(string Name, double Off, bool IsHeld)
    {
        public static Published Of(string name, double off, double plusMinus) =>
            new(name, off, Math.Abs(off) <= plusMinus);
    }
}
