using AirColumn.Acoustics;
using AirColumn.Design;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>How parts go together, step by step.</summary>
internal sealed class FitUp(Sizes sizes)
{
    private readonly FitUpWords words = new(sizes);

    /// <summary>First every pipe is cut, then what is formed from one, then each part put to another from the blown end.</summary>
    public IEnumerable<string> Steps(TubeAssembly assembly) =>
        StepsOf(assembly)
            .OrderBy(step =>
                assembly.Parts[step.Part] switch
                {
                    PipePart => 0,
                    BellPart or BendPart => 1,
                    _ => 2,
                }
            )
            .Select(step => step.Text);

    /// <summary>Whether anything is formed by heat; metal is not.</summary>
    public static bool NeedsHeat(TubeAssembly assembly) =>
        assembly
            .Parts.Select((part, i) => (part, i))
            .Any(item =>
                item.part is BellPart or BendPart && PartRemarks.IsFormedByHeat(assembly.PipeAt(item.i))
            );

    /// <summary>What the plastics stand that something is formed from; of one that is not known here, to ask its maker.</summary>
    public static IEnumerable<string> HeatLimitsOf(TubeAssembly assembly) =>
        assembly
            .Parts.Where((part, i) => part is PipePart && IsFormedFrom(assembly.Parts, i))
            .Cast<PipePart>()
            .Where(pipe => pipe.Stock?.Material != "copper")
            .Select(pipe => HeatLimits.Of(pipe.Stock?.Material)?.Text ?? FitUpWords.AskTheMaker(pipe))
            .Distinct();

    private static bool IsFormedFrom(IReadOnlyList<TubePart> parts, int pipe) =>
        pipe + 1 < parts.Count && parts[pipe + 1] is BellPart or BendPart;

    /// <summary>Whether anything is joined.</summary>
    public static bool IsJoined(TubeAssembly assembly) =>
        assembly.Parts.Any(part => part is JoinPart or AddedPart or InsertPart);

    /// <summary>Whether any pipe is known to be metal.</summary>
    public static bool HasMetal(TubeAssembly assembly) =>
        assembly.Parts.OfType<PipePart>().Any(pipe => pipe.Stock?.Material == "copper");

    /// <summary>Whether any pipe is plastic, or not known to be anything else.</summary>
    public static bool HasPlastic(TubeAssembly assembly) =>
        assembly.Parts.OfType<PipePart>().Any(pipe => pipe.Stock?.Material != "copper");

    /// <summary>Whether something is formed from the open pipe, so that only its other end can be trimmed.</summary>
    public static bool IsFormedFromOpenPipe(TubeAssembly assembly)
    {
        var index = assembly.Parts.ToList().FindIndex(part => ReferenceEquals(part, assembly.FreePipe));
        return index >= 0
            && index + 1 < assembly.Parts.Count
            && assembly.Parts[index + 1] is BellPart or BendPart;
    }

    /// <summary>A parameter by the part it belongs to, or by all pipes that are one.</summary>
    public static string NameOf(ColumnParameter parameter, AssembledTube tube)
    {
        for (var i = 0; i < tube.SectionParts.Count; i++)
        {
            if (parameter == tube.DiameterOf(tube.SectionPieces[i]))
            {
                return FitUpWords.InsideOf(tube.Assembly.PartsOfPiece(tube.SectionPieces[i]));
            }

            if (parameter == ColumnParameter.OutletDiameter(i))
            {
                return FitUpWords.EndOf(tube.SectionParts[i]);
            }

            if (parameter == ColumnParameter.SectionLength(i))
            {
                return FitUpWords.CutOf(tube.SectionParts[i]);
            }
        }

        return parameter.ToString();
    }

    /// <summary>A tolerance as people write it.</summary>
    public string Amount(Tolerance tolerance) =>
        tolerance.Parameter.Unit switch
        {
            "m" => words.Within(Length.FromMeters(tolerance.PlusMinus)),
            "K" => FitUpWords.WithinKelvins(tolerance.PlusMinus),
            _ => tolerance.ToString(),
        };

    // What is to be minded of a part follows its step, the last of them.
    private IEnumerable<(int Part, string Text)> StepsOf(TubeAssembly assembly)
    {
        for (var i = 0; i < assembly.Parts.Count; i++)
        {
            var remarks = assembly
                .Remarks.Where(remark => remark.Part == i)
                .Select(remark => $" {SheetWords.Note}: {remark.Text}");
            List<string> steps = [.. StepsOf(assembly, i)];
            for (var step = 0; step < steps.Count; step++)
            {
                yield return (
                    i,
                    step == steps.Count - 1 ? steps[step] + string.Concat(remarks) : steps[step]
                );
            }
        }
    }

    private IEnumerable<string> StepsOf(TubeAssembly assembly, int i)
    {
        var parts = assembly.Parts;
        var (before, after) = (i > 0 ? parts[i - 1] : null, i + 1 < parts.Count ? parts[i + 1] : null);
        switch (parts[i])
        {
            case PipePart pipe:
                yield return FitUpWords.Cut(pipe);
                break;
            case InsertPart insert:
                yield return words.PushIn(insert, (before ?? after)!);
                break;
            case JoinPart join:
                foreach (var (socket, neighbour) in new[] { (join.Before, before), (join.After, after) })
                {
                    if (socket is not null && neighbour is not null)
                    {
                        yield return words.PushInto(neighbour, join, socket);
                    }
                }

                break;
            case BendPart bend:
                yield return words.Bend(bend, assembly.PipeAt(i));
                break;
            case BellPart bell:
                yield return words.Bell(bell, assembly.PipeAt(i));
                break;
            case AddedPart added:
                yield return words.PutOn(added);
                break;
        }
    }
}
