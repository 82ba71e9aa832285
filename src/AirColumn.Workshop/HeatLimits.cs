namespace AirColumn.Workshop;

/// <summary>The temperatures to heed when one kind of plastic is formed by heat. Immutable.</summary>
/// <param name="Plastic">Its short name: PVC, CPVC, ABS, PP.</param>
/// <param name="Text">The temperature at which the plastic softens, the temperature that it must not reach, and its fumes; in English.</param>
/// <param name="Source">The source of the figures, or "common practice".</param>
public sealed record HeatLimits(string Plastic, string Text, string Source)
{
    /// <summary>The plastics with known limits.</summary>
    public static IReadOnlyList<HeatLimits> All { get; } =
    [
        // 71 to 85 °C are met for the beginning; bends at 225 to 275 °F.
        new(
            "PVC",
            "PVC softens at 80-85 °C (176-185 °F) and bends at 107-135 °C (225-275 °F). Stay below 140 °C (285 °F): near there it may "
                + "begin to give off carbon monoxide and hydrogen chloride.",
            "pipe makers' guides to bending and safety"
        ),
        new(
            "CPVC",
            "CPVC softens at 110 °C (230 °F) or above, and gives off carbon monoxide and hydrogen chloride when overheated. Do not form it at "
                + "the bench: buy elbows.",
            "softening: a pipe maker's data, by ISO 2507; elbows: common practice"
        ),
        new(
            "ABS",
            "ABS softens at 100-115 °C (212-239 °F). Overheated it gives off carbon monoxide and hydrogen cyanide: keep it far from browning.",
            "softening: makers of the plastic; fumes: NBSIR 85-3248"
        ),
        new(
            "PP",
            "Polypropylene stays stiff almost to its melting point, about 160 °C (320 °F), and then slumps. Do not form it at the bench: buy "
                + "elbows.",
            "common practice"
        ),
    ];

    /// <summary>The limits of a material of the catalogue; null if no limits are known; then ask the maker of the plastic.</summary>
    /// <param name="material">The material, such as PVC-U.</param>
    /// <returns>The limits, or null.</returns>
    public static HeatLimits? Of(string? material) =>
        All.FirstOrDefault(limits => limits.Plastic == (material == "PVC-U" ? "PVC" : material));
}
