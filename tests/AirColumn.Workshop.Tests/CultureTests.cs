using System.Globalization;
using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tests.Tubes;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests;

/// <summary>
/// What is read and written is the same in a country with a decimal comma, in one whose small I has no dot, and in one with other digits and
/// another calendar.
/// </summary>
public class CultureTests
{
    private const string Parts = """
        { "tube": 1, "name": "İki, ıslık", "wall": "2.5 mm", "parts": [
          { "part": "insert", "name": "mouth", "inside": "30.5 mm", "outside": "40 mm", "inserted": "25 mm", "protrudes": "10 mm" },
          { "part": "pipe", "stock": "pvc-40 1-1/2", "length": "open", "price": 7.25 },
          { "part": "bell", "inside": "2 1/2 in", "length": "12.5 cm" } ] }
        """;

    public static TheoryData<string> Cultures => ["de-DE", "tr-TR", "ar-SA"];

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_plan_from_a_parts_file_to_its_sheets(string culture) => IsTheSameIn(culture, Sheets);

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_simple_plan(string culture) =>
        IsTheSameIn(
            culture,
            () =>
            {
                var plan = Bench.Plan(TubeAssembly.OnePipe(Bench.Mm(45.5)), "D2");
                return [plan.Explanation, .. plan.Warnings, Exact(plan.FirstLength!.Exact)];
            }
        );

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_history_of_measurements(string culture) =>
        IsTheSameIn(
            culture,
            () =>
            {
                var one = new TubeMeasurement(
                    new DateTimeOffset(2026, 3, 9, 14, 5, 6, TimeSpan.FromHours(2)),
                    Bench.Mm(1100.25),
                    Frequency.FromHertz(72.5),
                    0.75,
                    Bench.Room,
                    "take İ.wav"
                );
                var written = MeasurementHistory.Empty.With(one).Write();
                return [written, MeasurementHistory.Read(written).Write()];
            }
        );

    [Theory]
    [MemberData(nameof(Cultures))]
    public void A_catalogue_of_ones_own(string culture) =>
        IsTheSameIn(
            culture,
            () =>
            {
                var catalogue = Catalogue.Standard.WithPipes(
                    "series,size,material,outside,outside_tolerance,wall_min,wall_max,inside,unit,standard,edition,source,certainty\n"
                        + "IRRIGATION,25,PVC,25.5,0.25,1.75,2,,mm,none,none,own caliper,own\n"
                );
                return
                [
                    catalogue.Pipe("IRRIGATION 25").ToString(),
                    Exact(catalogue.Pipe("IRRIGATION 25").Inside),
                ];
            }
        );

    [Theory]
    [MemberData(nameof(Cultures))]
    public void What_is_refused(string culture) =>
        IsTheSameIn(
            culture,
            () =>
                [
                    Refused(() => PartsFile.Read(Parts.Replace("30.5 mm", "30,5 mm"), Catalogue.Standard)),
                    Refused(() =>
                        PartsFile.Read(Parts.Replace("\"insert\"", "\"INSERT\""), Catalogue.Standard)
                    ),
                    Refused(() => _ = TubeAssembly.OnePipe(Bench.Mm(-1.5))),
                ]
        );

    private static string[] Sheets()
    {
        var file = PartsFile.Read(Parts, Catalogue.Standard);
        var build = TubeBuilder.Plan(file.Assembly, Pitch.Parse("D2"), Tuning.Concert, TubeBuilderTests.Room);
        return
        [
            build.Explanation,
            .. build.Warnings,
            BuildSheet.Html(build, file.Name),
            BuildSheet.Html(build, file.Name, LengthUnits.Inches),
        ];
    }

    private static string Exact(Length length) =>
        length.Millimeters.ToString("R", CultureInfo.InvariantCulture);

    // Below our sentence the runtime adds the value in its own way.
    private static string Refused(Action read) => Assert.ThrowsAny<Exception>(read).Message.Split('\n')[0];

    private static void IsTheSameIn(string culture, Func<string[]> texts)
    {
        string[] expected = [];
        Bench.RunIn("", () => expected = texts());
        Bench.RunIn(culture, () => Assert.Equal(expected, texts()));
    }
}
