namespace AirColumn.Workshop;

/// <summary>The usual cautions for a workshop in which plastic pipe is cut, joined and played, in English.</summary>
/// <remarks>
/// The cautions are general practice and figures from the guides of pipe and cement makers, each with its source. <see cref="HeatLimits"/>
/// has the figures for the plastics. The cautions do not replace the label of the product in hand, the local building code or a licensed
/// trade. Show <see cref="First"/>, which states this, above the cautions.
/// </remarks>
public static class Cautions
{
    /// <summary>The sentence that comes before every caution.</summary>
    public static string First => "Product labels, local codes and licensed practice come first.";

    /// <summary>All cautions, in the order of the work.</summary>
    public static IReadOnlyList<Caution> All { get; } =
    [
        new(
            CautionStep.Pipe,
            "New pipe only",
            "Never use pipe that has been a drain or has carried anything but drinking water: germs, chemicals and cement stay in it. Wash new "
                + "pipe with soap and water before you play it."
        ),
        new(
            CautionStep.Cutting,
            "Cutting",
            "Clamp the pipe, wear eye protection, keep hands off the line of the saw."
        ),
        new(
            CautionStep.Hearing,
            "Power saws",
            "Wear hearing protection: they are louder than 85 dB(A), above which hearing suffers in a working day. Let the blade stop before "
                + "you reach for the pipe."
        )
        {
            Source = "85 dB(A) over eight hours: NIOSH",
        },
        new(
            CautionStep.Dust,
            "Dust",
            "Wear a dust mask; sweep up or wipe wet, and never blow dust out with your mouth."
        ),
        new(
            CautionStep.Edges,
            "Edges",
            "Deburr both cuts inside and outside. Round every edge that meets the mouth until it is smooth to a fingertip."
        ),
        new(
            CautionStep.Drilling,
            "Drilling",
            "Clamp the pipe on a block, start with a small bit, wear eye protection but no gloves near the turning bit. Large bits grab as they "
                + "break through: use a step bit, low speed and little pressure."
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
            "Each plastic has its own limits; of any other plastic read its maker's data first. Work outdoors or with strong ventilation, use "
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
    /// <returns>The caution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value names no step.</exception>
    public static Caution For(CautionStep step) =>
        All.FirstOrDefault(caution => caution.Step == step)
        ?? throw new ArgumentOutOfRangeException(
            nameof(step),
            step,
            $"{nameof(step)} is {(int)step}; allowed are {string.Join(", ", Enum.GetNames<CautionStep>())}."
        );
}
