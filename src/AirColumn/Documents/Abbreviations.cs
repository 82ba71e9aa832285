using System.Globalization;
using System.Resources;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>How the units library writes the units of one quantity in the invariant culture.</summary>
/// <remarks>
/// Read where the library reads them: asking it for one unit makes it set up all of its hundred quantities, which takes longer than the rest of a
/// program's start. Another version of it may keep them elsewhere; then it is asked.
/// </remarks>
internal sealed class Abbreviations(QuantityInfo quantity, string folder = "UnitsNet.GeneratedCode.Resources")
{
    private readonly ResourceManager resources = new(
        $"{folder}.{quantity.Name}",
        typeof(QuantityInfo).Assembly
    );

    // A table of our own: the library's default one can be changed by any program.
    private UnitAbbreviationsCache? library;

    /// <summary>Of a unit; none or several.</summary>
    public IReadOnlyList<string> Of(UnitInfo unit)
    {
        try
        {
            if (library is null)
            {
                return resources.GetString(unit.PluralName, CultureInfo.InvariantCulture)?.Split(',') ?? [];
            }
        }
        catch (MissingManifestResourceException)
        {
            library = UnitAbbreviationsCache.CreateDefault();
        }

        return library.GetUnitAbbreviations(
            unit.Value.GetType(),
            Convert.ToInt32(unit.Value, CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );
    }
}
