using System.Globalization;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>The planner's sentences, in words of the bench and the invariant culture.</summary>
internal static class Wording
{
    private const double MuchPipe = 100; // mm

    public static string Cut(Pitch note, Frequency target, BuiltTube built, Sizes sizes) =>
        $"'{built.Tube.FreeCut!.Pipe.Name}' cut to {sizes.Tape(built.Cut)} puts the first resonance on {note}, {Hertz(target)}.";

    public static string TooWide(Pitch note, Frequency target, Frequency highest) =>
        $"No pipe length gives {note}: it is {Hertz(target)}, and in a tube this wide the computation ends at "
        + $"{Hertz(highest)}; choose a lower note.";

    public static string NoLength(Pitch note, Frequency target, LengthSolution solution, Sizes sizes) =>
        (solution.Status, solution.ResidualCents) switch
        {
            (SolveStatus.OutOfReach, < 0) =>
                $"No pipe length gives {note}: even with {Least(solution, sizes)} the first resonance is "
                    + $"{Cents(-solution.ResidualCents)} below {Hertz(target)}; choose a lower note or shorter fittings.",
            (SolveStatus.OutOfReach, _) =>
                $"No pipe length gives {note}: even a pipe of {sizes.Sold(solution.Length)} keeps the first resonance "
                    + $"above {Hertz(target)}; choose a higher note.",
            (SolveStatus.NoResonance, _) => NoResonance(note, target),
            _ => $"No pipe length was found for {note}, {Hertz(target)}: the search came no nearer than "
                + $"{Cents(Math.Abs(solution.ResidualCents))}.",
        };

    private static string Least(LengthSolution solution, Sizes sizes) =>
        solution.Length.Millimeters < MuchPipe
            ? "next to no pipe"
            : $"only {sizes.Tape(solution.Length)} of the open pipe straight, which its ends and holes need,";

    public static string NoResonance(Pitch note, Frequency target) =>
        $"No pipe length was found for {note}, {Hertz(target)}: near the length it would need, the tube shows no resonance "
        + "of its lowest mode; choose another note or other parts.";

    public static string Millimetres(Length length) =>
        string.Create(CultureInfo.InvariantCulture, $"{length.Millimeters:0.#} mm");

    public static string NoFirstCut(Pitch note, Length cut, Sizes sizes) =>
        $"{note} is reachable, with the open pipe cut to {sizes.Tape(cut)}, but no first cut is safely flat: no pipe of "
        + $"{sizes.Sold(Length.FromMeters(TubeBuilder.LongestPipeMetres))} or less is low enough; choose a higher note.";

    public static string Size(Length length) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{length.Millimeters:0.##} mm ({length.Inches:0.000} in)"
        );

    private static string Cents(double cents) =>
        string.Create(CultureInfo.InvariantCulture, $"{cents:0.#} cents");

    private static string Hertz(Frequency frequency) =>
        string.Create(CultureInfo.InvariantCulture, $"{frequency.Hertz:0.00} Hz");
}
