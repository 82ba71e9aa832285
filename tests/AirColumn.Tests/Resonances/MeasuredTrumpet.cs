using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>A trumpet whose bore was measured, and the peaks that were measured of another; sources at the heads of the two tables.</summary>
internal static class MeasuredTrumpet
{
    /// <summary>The bore, in air of 27 °C as the peaks.</summary>
    public static Column Column()
    {
        var points = ReferenceTable.Read("trumpet-bore.csv").Rows.ToList();
        return new Column(
            new Bore(
                points
                    .Zip(points.Skip(1))
                    .Select(pair => new ConeSection(
                        Mm(pair.First["diameter_mm"]),
                        Mm(pair.Second["diameter_mm"]),
                        Mm(pair.Second["position_mm"] - pair.First["position_mm"])
                    )),
                new OpenEnd(Mm(1))
            ),
            Air.At(Temperature.FromDegreesCelsius(27), RelativeHumidity.FromPercent(50))
        );
    }

    /// <summary>The peaks, from the lowest: frequency_hz, q, peak_mpa.</summary>
    public static List<ReferenceTable.Row> Peaks() => [.. ReferenceTable.Read("trumpet-peaks.csv").Rows];
}
