using System.Globalization;
using AirColumn.Documents;
using UnitsNet;

namespace AirColumn.Tests.Documents;

/// <summary>Names of units are those that the units library would give.</summary>
public class AbbreviationsTests
{
    private static readonly QuantityInfo[] Quantities =
    [
        Length.Info,
        Temperature.Info,
        RelativeHumidity.Info,
        Pressure.Info,
        Ratio.Info,
        Speed.Info,
        Density.Info,
        DynamicViscosity.Info,
        ThermalConductivity.Info,
        SpecificEntropy.Info,
        Frequency.Info,
    ];

    [Fact]
    public void As_the_library_says_without_asking_it() =>
        AreTheLibrarys(quantity => new Abbreviations(quantity));

    [Fact]
    public void Where_it_keeps_them_elsewhere_it_is_asked() =>
        AreTheLibrarys(quantity => new Abbreviations(quantity, "UnitsNet.Elsewhere"));

    private static void AreTheLibrarys(Func<QuantityInfo, Abbreviations> read)
    {
        var library = UnitAbbreviationsCache.CreateDefault();
        foreach (var quantity in Quantities)
        {
            var ours = read(quantity);
            Assert.All(
                quantity.UnitInfos,
                unit =>
                    Assert.Equal(
                        library.GetUnitAbbreviations(
                            unit.Value.GetType(),
                            Convert.ToInt32(unit.Value, CultureInfo.InvariantCulture),
                            CultureInfo.InvariantCulture
                        ),
                        ours.Of(unit)
                    )
            );
        }
    }
}
