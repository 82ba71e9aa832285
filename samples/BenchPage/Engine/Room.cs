using AirColumn.Workshop;
using UnitsNet;

namespace BenchPage.Engine;

/// <summary>Air, tuning and units of the bench.</summary>
internal static class Room
{
    public static AirColumn.Air Air(BenchState state) =>
        AirColumn.Air.At(
            Temperature.FromDegreesCelsius(state.Temperature),
            RelativeHumidity.FromPercent(state.Humidity)
        );

    public static AirColumn.Tuning Tuning(BenchState state) =>
        AirColumn.Tuning.Concert.WithReference(Frequency.FromHertz(state.Reference));

    public static LengthUnits Units(BenchState state) =>
        state.Units switch
        {
            "mm" => LengthUnits.Millimetres,
            "in" => LengthUnits.Inches,
            _ => LengthUnits.Both,
        };
}
