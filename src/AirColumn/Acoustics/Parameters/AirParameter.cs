using AirColumn.Acoustics.Line;
using UnitsNet;

namespace AirColumn.Acoustics.Parameters;

/// <summary>A quantity of the state of the air, in all states of a profile by the same amount.</summary>
internal sealed record AirParameter(AirQuantity Quantity) : IColumnChange
{
    public string Unit =>
        Quantity switch
        {
            AirQuantity.Temperature => "K",
            AirQuantity.Pressure => "Pa",
            _ => "",
        };

    public double StepAt(in ColumnParts parts) =>
        Quantity switch
        {
            AirQuantity.Temperature => 0.02,
            AirQuantity.Humidity => 5e-4,
            AirQuantity.Pressure => 50,
            _ => 5e-5,
        };

    public double Of(in ColumnParts parts) => Value(StateAtBlownEnd(parts));

    public ColumnParts With(in ColumnParts parts, double value)
    {
        var change = value - Of(parts);
        return parts with { Air = parts.Air.With(state => Changed(state, change)) };
    }

    private double Value(AirState state) =>
        Quantity switch
        {
            AirQuantity.Temperature => state.Temperature.Kelvins,
            AirQuantity.Humidity => state.Humidity.Percent / 100,
            AirQuantity.Pressure => state.Pressure.Pascals,
            _ => state.CarbonDioxide.DecimalFractions,
        };

    private AirState Changed(AirState state, double change)
    {
        var value = Value(state) + change;
        return new AirState(
            Quantity == AirQuantity.Temperature
                ? UnitsNet.Temperature.FromDegreesCelsius(state.Temperature.DegreesCelsius + change)
                : state.Temperature,
            Quantity == AirQuantity.Humidity ? RelativeHumidity.FromPercent(100 * value) : state.Humidity,
            Quantity == AirQuantity.Pressure ? UnitsNet.Pressure.FromPascals(value) : state.Pressure,
            Quantity == AirQuantity.CarbonDioxide ? Ratio.FromDecimalFractions(value) : state.CarbonDioxide
        );
    }

    private AirState StateAtBlownEnd(in ColumnParts parts) =>
        parts.Air.At(0, parts.Bore.LengthMetres).State
        ?? throw new ArgumentException(
            $"The column has no {this}: its air was given by constants. Make the air with Air.At.",
            nameof(parts)
        );

    /// <summary>Which quantity.</summary>
    public override string ToString() =>
        Quantity switch
        {
            AirQuantity.Temperature => "temperature of the air",
            AirQuantity.Humidity => "humidity of the air",
            AirQuantity.Pressure => "pressure of the air",
            _ => "carbon dioxide in the air",
        };
}

/// <summary>What of the air.</summary>
internal enum AirQuantity
{
    /// <summary>Its temperature.</summary>
    Temperature,

    /// <summary>Its relative humidity.</summary>
    Humidity,

    /// <summary>Its static pressure.</summary>
    Pressure,

    /// <summary>The carbon dioxide in its dry part.</summary>
    CarbonDioxide,
}
