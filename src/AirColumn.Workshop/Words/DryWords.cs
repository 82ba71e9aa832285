using System.Globalization;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Words;

/// <summary>What is different before the joints are cemented, in English.</summary>
internal sealed class DryWords(Sizes sizes)
{
    // In short words: with one column more the table must still fit on a phone.
    public static readonly string[] TrimHead =
    [
        "cut off in all",
        "pipe then",
        "note, home",
        "cents from the note",
        "note, dry, about",
    ];

    /// <summary>At the step that puts a pipe into its socket.</summary>
    public string StopsShort(DryJoint joint) =>
        $"Dry, it stops about {sizes.Tape(joint.StopsShort)} short of that (between {sizes.Tape(joint.Least)} and {sizes.Tape(joint.Most)} by the table). Do not force it. "
        + "Mark the pipe where it will be home, and measure from the mark.";

    /// <summary>Where the tube is tuned.</summary>
    public string Tuning(DryTuning dry) =>
        $"Tapered sockets hold the pipes out until they are cemented: dry they stop {(dry.Fit.IsMeasured ? "" : "about ")}{sizes.Tape(dry.Fit.InAll)} short in all, "
        + Text(
            $"and the tube plays about {dry.CentsToHome:0.#} cents flatter, ±{dry.PlusMinusCents:0}. Trim dry to {dry.Target.Hertz:0.00} Hz, not to the note itself: pushed home it rises to the note."
        )
        + (
            dry.Fit.IsMeasured ? ""
            : dry.CentsPerMillimetre > 0
                ? Text(
                    $" The ± comes from the tolerances of pipe and sockets. Measure how far the pipes really stop short: each millimetre is worth {dry.CentsPerMillimetre:0.0} cents."
                )
            : " Measure whether the pipes really stop short."
        );

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
