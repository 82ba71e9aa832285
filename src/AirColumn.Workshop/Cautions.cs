namespace AirColumn.Workshop;

/// <summary>The usual cautions of a workshop where plastic pipe is cut, joined and played, in English.</summary>
/// <remarks>
/// General practice and the figures of pipe and cement makers' guides. They do not replace the label of the product in
/// hand, the code of the place or a licensed trade: <see cref="First"/> says so and belongs above them.
/// </remarks>
public static class Cautions
{
    /// <summary>What comes before every caution here.</summary>
    public static string First => "Product labels, local codes and licensed practice come first.";

    /// <summary>All cautions, in the order of the work.</summary>
    public static IReadOnlyList<Caution> All { get; } =
    [
        new(
            CautionStep.Cutting,
            "Cutting",
            "Clamp the pipe, wear eye protection, keep hands off the line of the saw."
        ),
        new(
            CautionStep.Dust,
            "Dust",
            "Wear a dust mask; sweep up or wipe wet, and blow no dust out with your mouth."
        ),
        new(
            CautionStep.Edges,
            "Edges",
            "Deburr both cuts inside and outside. Round every edge that meets the mouth until it is smooth to a fingertip."
        ),
        new(
            CautionStep.Playing,
            "Playing",
            "Light-headed? Stop, breathe normally, and rest before going on."
        ),
        new(
            CautionStep.Hygiene,
            "Hygiene",
            "Clean the mouth end before and after playing, and clean it before anyone else plays."
        ),
        new(
            CautionStep.Heating,
            "Heating plastic",
            "PVC softens at 80-85 °C (176-185 °F) and may give off carbon monoxide and hydrogen chloride from near 140 °C "
                + "(285 °F); for any other plastic read its maker's data first. Work outdoors or with strong ventilation, use "
                + "no open flame, stop at any browning or smell. Hot water and steam are gentler but scald: wear gloves and "
                + "long sleeves, and never heat a tube with its ends sealed."
        ),
        new(
            CautionStep.SolventCement,
            "Solvent cement",
            "The vapour is flammable: ventilate, no flame or spark. Wear gloves and eye protection. PVC and ABS need their "
                + "own cements; polypropylene takes none. Keep joints dry until the tube is tuned. Let them set as the maker's table says, "
                + "longer when cold or humid; keep cement off the mouth end and air the tube fully before playing."
        ),
        new(
            CautionStep.Paint,
            "Paint",
            "Outside only: never in the bore or where lips go. Ventilate, thin coats, and let it cure fully before playing."
        ),
        new(
            CautionStep.Metal,
            "Metal pipe",
            "Cut edges are sharp: wear gloves, file them inside and outside until nothing catches. Soldering and annealing bring flame, flux and "
                + "fumes: they are trades of their own. Solder and flux stay out of the bore and off the mouth end."
        ),
    ];

    /// <summary>The caution of one step.</summary>
    /// <param name="step">The step.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value names no step.</exception>
    public static Caution For(CautionStep step) =>
        All.FirstOrDefault(caution => caution.Step == step)
        ?? throw new ArgumentOutOfRangeException(
            nameof(step),
            step,
            $"{nameof(step)} is {(int)step}; allowed are {string.Join(", ", Enum.GetNames<CautionStep>())}."
        );
}
