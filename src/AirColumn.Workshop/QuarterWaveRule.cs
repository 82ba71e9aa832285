using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>
/// What the quarter-wave rule L = c/(4f) says (common practice), and how far off it is for this tube: the rule knows no
/// diameter, no fittings, no open end and no losses.
/// </summary>
public sealed record QuarterWaveRule
{
    internal QuarterWaveRule(Length totalLength, Length difference, TubeCut? cut)
    {
        TotalLength = totalLength;
        Difference = difference;
        Cut = cut;
    }

    /// <summary>The total length by the rule, with the speed of sound of the plan's air.</summary>
    public Length TotalLength { get; }

    /// <summary>The rule's total length less the computed one: positive if the rule is too long.</summary>
    public Length Difference { get; }

    /// <summary>The same parts cut to the rule's total; null where they cannot be: the fittings alone are as long as that.</summary>
    public TubeCut? Cut { get; }
}
