using System.Globalization;
using AirColumn.Gases;
using AirColumn.Pitches;
using UnitsNet;

namespace AirColumn.Workshop.Tests;

/// <summary>What the tests plan with.</summary>
internal static class Bench
{
    public static Air Room { get; } =
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));

    public static Length Mm(double value) => Length.FromMillimeters(value);

    public static TubePlan Plan(
        TubeParts parts,
        string note,
        Air? air = null,
        TubePlanOptions? options = null
    ) => TubePlanner.Plan(parts, Pitch.Parse(note), Tuning.Concert, air ?? Room, options);

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
