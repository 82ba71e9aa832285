using System.Globalization;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests;

/// <summary>What the tests plan with.</summary>
internal static class Bench
{
    public static Air Room { get; } =
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));

    public static Length Mm(double value) => Length.FromMillimeters(value);

    public static TubeBuild Plan(TubeAssembly parts, string note, Air? air = null) =>
        TubeBuilder.Plan(parts, Pitch.Parse(note), Tuning.Concert, air ?? Room);

    public static void RunIn(string culture, Action test)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        // A machine without data of cultures would pass for one in any country.
        Assert.True(culture != "de-DE" || 1.5.ToString(CultureInfo.CurrentCulture) == "1,5");
        try
        {
            test();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
