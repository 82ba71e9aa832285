using AirColumn;
using AirColumn.Documents;
using ColumnTool.Answers;
using ColumnTool.Questions;
using Shared;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>air: the acoustic properties of humid air, the model that gave them and whether it is inside its range.</summary>
internal static class AirVerb
{
    private static readonly Parameter<Temperature> Warmth = new(
        "temperature",
        new TextKind<Temperature>(text => QuantityText.ParseTemperature(text), "20 °C"),
        "of the air, with its unit: −20 to 50 °C",
        Parameter.Required
    );

    private static readonly Parameter<RelativeHumidity> Humidity = new(
        "humidity",
        new TextKind<RelativeHumidity>(text => QuantityText.ParseRelativeHumidity(text), "50 %"),
        "relative, 0 to 100 %",
        "50 %"
    );

    private static readonly Parameter<Pressure> Static = new(
        "pressure",
        new TextKind<Pressure>(text => QuantityText.ParsePressure(text), "101.325 kPa"),
        "50 to 110 kPa",
        "101.325 kPa"
    );

    private static readonly Parameter<Ratio> CarbonDioxide = new(
        "co2",
        new TextKind<Ratio>(text => QuantityText.ParseRatio(text), "400 ppm"),
        "carbon dioxide by mole, 0 to 10 %",
        "400 ppm"
    );

    public static Verb Create() =>
        new Verb<Air>
        {
            Name = "air",
            Summary = "The acoustic properties of humid air.",
            IsAboutColumn = false,
            Own = [Warmth, Humidity, Static, CarbonDioxide],
            Members =
            [
                // The names are those of the column document.
                Fields<Air>.Group(
                    "state",
                    "the state of the air",
                    air => air.State,
                    Fields<AirState>.Quantity(
                        "temperature",
                        "°C",
                        "temperature",
                        state => state.Temperature.DegreesCelsius
                    ),
                    Fields<AirState>.Quantity(
                        "humidity",
                        "%",
                        "relative humidity",
                        state => state.Humidity.Percent
                    ),
                    Fields<AirState>.Quantity(
                        "pressure",
                        "kPa",
                        "static pressure",
                        state => state.Pressure.Kilopascals
                    ),
                    Fields<AirState>.Quantity(
                        "co2",
                        "ppm",
                        "carbon dioxide by mole",
                        state => state.CarbonDioxide.PartsPerMillion
                    )
                ),
                Fields<Air>.Quantity(
                    "speedOfSound",
                    "m/s",
                    "at low frequency",
                    air => air.SpeedOfSound.MetersPerSecond
                ),
                Fields<Air>.Quantity(
                    "density",
                    "kg/m³",
                    "density",
                    air => air.Density.KilogramsPerCubicMeter
                ),
                Fields<Air>.Quantity(
                    "viscosity",
                    "Pa·s",
                    "dynamic viscosity",
                    air => air.DynamicViscosity.PascalSeconds
                ),
                Fields<Air>.Quantity(
                    "conductivity",
                    "W/(m·K)",
                    "heat conductivity",
                    air => air.ThermalConductivity.WattsPerMeterKelvin
                ),
                Fields<Air>.Quantity(
                    "heatCapacity",
                    "J/(kg·K)",
                    "per mass, at constant pressure",
                    air => air.SpecificHeatCapacity.JoulesPerKilogramKelvin
                ),
                Fields<Air>.Quantity(
                    "heatCapacityRatio",
                    "1",
                    "at constant pressure over constant volume",
                    air => air.HeatCapacityRatio
                ),
                Fields<Air>.Quantity(
                    "thermalDiffusivity",
                    "m²/s",
                    "heat conductivity over density and heat capacity",
                    air => air.ThermalDiffusivity.SquareMetersPerSecond
                ),
                Fields<Air>.Quantity(
                    "prandtlNumber",
                    "1",
                    "viscosity over density and thermal diffusivity",
                    air => air.PrandtlNumber
                ),
                Fields<Air>.Text(
                    "model",
                    "the model used",
                    air => air.Model == AirModel.Iec61094 ? "IEC 61094-2:2009, Annex F" : "mixture of gases"
                ),
                Fields<Air>.Flag(
                    "insideStatedRange",
                    "whether the state is inside the range stated by the model's source",
                    air => air.IsInsideStatedRange
                ),
            ],
            Compute = arguments =>
            {
                var air = At(arguments);
                return (air, air.Warnings);
            },
        };

    // Errors name what was given, not the parameter of a library.
    private static Air At(Arguments arguments)
    {
        try
        {
            return Air.At(
                arguments.Get(Warmth),
                arguments.Get(Humidity, RelativeHumidity.FromPercent(50)),
                arguments.Maybe(Static),
                arguments.Maybe(CarbonDioxide)
            );
        }
        catch (ArgumentException problem)
        {
            Parameter parameter = problem.ParamName switch
            {
                "carbonDioxide" => CarbonDioxide,
                "humidity" => Humidity,
                "pressure" => Static,
                _ => Warmth,
            };
            throw new Problem(
                ProblemKind.Arguments,
                OneLine.Of(problem, arguments.Name(parameter)),
                null,
                parameter.JsonName
            );
        }
    }
}
