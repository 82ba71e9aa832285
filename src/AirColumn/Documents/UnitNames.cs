using System.Collections.Frozen;
using System.Text;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>
/// The written names of the units of one quantity: the library's abbreviations in the invariant culture, ours beside
/// them, and ASCII for both ("kg/m3", "Pa.s", "W/(m K)"). Immutable.
/// </summary>
internal sealed class UnitNames<TUnit>
    where TUnit : struct, Enum
{
    private readonly FrozenDictionary<string, TUnit> units;

    /// <summary>Reads the abbreviations of all units of a quantity.</summary>
    /// <param name="quantity">The quantity whose units these are.</param>
    /// <param name="more">Names the library does not have.</param>
    public UnitNames(QuantityInfo quantity, params IEnumerable<(string Name, TUnit Unit)> more)
    {
        var abbreviations = new Abbreviations(quantity);
        var names = quantity
            .UnitInfos.SelectMany(
                abbreviations.Of,
                (unit, name) => (Name: name, Unit: (TUnit)(object)unit.Value)
            )
            .Concat(more);
        units = names
            .Select(name => (Key: Key(name.Name), name.Unit))
            .Where(name => name.Key.Length > 0)
            .GroupBy(name => name.Key, name => name.Unit, StringComparer.Ordinal)
            // A name shared by two units, such as the two points of printers, says nothing.
            .Where(group => group.Distinct().Count() == 1)
            .ToFrozenDictionary(group => group.Key, group => group.First(), StringComparer.Ordinal);
    }

    /// <summary>Finds the unit of a name.</summary>
    public bool TryFind(string name, out TUnit unit) => units.TryGetValue(Key(name), out unit);

    /// <summary>The name of a unit that differs from this one only in capitals, if there is one.</summary>
    public string? InOtherCapitals(string name)
    {
        var key = Key(name);
        return units
            .Keys.Where(known => string.Equals(known, key, StringComparison.OrdinalIgnoreCase))
            .OrderBy(known => known.Count(char.IsUpper))
            .ThenBy(known => known, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    // What is left of a name when products, spaces, parentheses and raised digits may be written in any way. Letters
    // keep their case: mm is not Mm.
    private static string Key(string name)
    {
        var key = new StringBuilder(name.Length);
        foreach (var c in name)
        {
            switch (c)
            {
                case '·' or '⋅' or '∙' or '•' or '*' or '.' or '(' or ')' or '^':
                case var space when char.IsWhiteSpace(space):
                    break;
                case '²':
                    key.Append('2');
                    break;
                case '³':
                    key.Append('3');
                    break;
                case 'μ' or 'µ': // Greek mu and the micro sign
                    key.Append('u');
                    break;
                case 'º' or '˚': // seen on keyboards where the degree sign is meant
                    key.Append('°');
                    break;
                default:
                    key.Append(c);
                    break;
            }
        }

        return key.ToString();
    }
}
