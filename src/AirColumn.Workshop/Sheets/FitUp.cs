using System.Globalization;
using AirColumn.Acoustics;
using AirColumn.Design;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>How parts go together, in words.</summary>
internal static class FitUp
{
    /// <summary>First every pipe is cut, then what is formed from one, then each part put to another from the blown end.</summary>
    public static IEnumerable<string> Steps(TubeAssembly assembly) =>
        StepsOf(assembly)
            .OrderBy(step =>
                step.Part is PipePart ? 0
                : step.Part is BellPart or BendPart ? 1
                : 2
            )
            .Select(step => step.Text);

    /// <summary>Whether anything is formed by heat.</summary>
    public static bool NeedsHeat(TubeAssembly assembly) =>
        assembly.Parts.Any(part => part is BellPart or BendPart);

    private static IEnumerable<(TubePart Part, string Text)> StepsOf(TubeAssembly assembly)
    {
        var parts = assembly.Parts;
        for (var i = 0; i < parts.Count; i++)
        {
            var (before, after) = (i > 0 ? parts[i - 1] : null, i + 1 < parts.Count ? parts[i + 1] : null);
            switch (parts[i])
            {
                case PipePart pipe:
                    yield return (pipe, $"Cut {pipe.Name} square, deburr it inside and outside.");
                    break;
                case InsertPart insert:
                    yield return (
                        insert,
                        $"Push {insert.Name} {Wording.Both(insert.Inserted)} into {(before ?? after)!.Name}"
                            + (
                                insert.Protrudes > Length.Zero
                                    ? $"; it stands out {Wording.Both(insert.Protrudes)}."
                                    : ", flush with its end."
                            )
                    );
                    break;
                case JoinPart join:
                    foreach (var (socket, neighbour) in new[] { (join.Before, before), (join.After, after) })
                    {
                        if (socket is not null && neighbour is not null)
                        {
                            yield return (
                                join,
                                $"Push {neighbour.Name} into {join.Name}, {Wording.Both(Length.FromMillimeters(socket.Depth.Millimeters - socket.Gap.Millimeters))} deep"
                                    + (
                                        socket.Gap > Length.Zero
                                            ? $", which leaves {Wording.Millimetres(socket.Gap)} to the stop."
                                            : ", to the stop."
                                    )
                            );
                        }
                    }

                    break;
                case BendPart bend:
                    yield return (
                        bend,
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"Form {bend.Name}: {bend.Angle.Degrees:0.#}° about a radius of {Wording.Both(bend.Radius)} to the centreline, the bore kept round."
                        )
                    );
                    break;
                case BellPart bell:
                    yield return (
                        bell,
                        $"Form {bell.Name} over {Wording.Both(bell.Formed)} to {Wording.Size(bell.EndInside)} inside at its end."
                    );
                    break;
                case AddedPart added:
                    yield return (
                        added,
                        $"Put on {added.Name}; the tube must be {Wording.Both(added.Adds)} longer with it than without."
                    );
                    break;
            }
        }
    }

    /// <summary>A parameter by the part it belongs to.</summary>
    public static string NameOf(ColumnParameter parameter, AssembledTube tube)
    {
        for (var i = 0; i < tube.SectionParts.Count; i++)
        {
            if (parameter == ColumnParameter.Diameter(i) || IsTogetherFrom(parameter, i))
            {
                return $"inside of {tube.SectionParts[i].Name}";
            }

            if (parameter == ColumnParameter.OutletDiameter(i))
            {
                return $"end of {tube.SectionParts[i].Name}";
            }

            if (parameter == ColumnParameter.SectionLength(i))
            {
                return $"cut of {tube.SectionParts[i].Name}";
            }
        }

        return parameter.ToString();
    }

    /// <summary>A tolerance as people write it.</summary>
    public static string Amount(Tolerance tolerance) =>
        tolerance.Parameter.Unit switch
        {
            "m" => $"± {Wording.Millimetres(Length.FromMeters(tolerance.PlusMinus))}",
            "K" => string.Create(CultureInfo.InvariantCulture, $"± {tolerance.PlusMinus:0.#} °C"),
            _ => string.Create(CultureInfo.InvariantCulture, $"± {tolerance.PlusMinus:G3}"),
        };

    private static bool IsTogetherFrom(ColumnParameter parameter, int section) =>
        parameter
            .ToString()
            .StartsWith($"{ColumnParameter.Diameter(section)} and ", StringComparison.Ordinal);
}
