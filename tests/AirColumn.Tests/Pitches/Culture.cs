using System.Globalization;

namespace AirColumn.Tests.Pitches;

/// <summary>Runs a test as if on a machine in another country.</summary>
internal static class Culture
{
    public static void Run(string name, Action test)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
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
