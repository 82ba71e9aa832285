using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>How parts go together, step by step.</summary>
internal sealed class FitUp(Sizes sizes)
{
    private readonly FitUpWords words = new(sizes);
    private readonly StepPicture pictures = new(sizes);
    private readonly DryWords dryWords = new(sizes);
    private readonly HoleWords holeWords = new(sizes);

    /// <summary>First every pipe is cut, then what is formed from one, then each part put to another from the blown end.</summary>
    /// <param name="assembly">The parts.</param>
    /// <param name="cuts">The cut list, in the order of the pipes.</param>
    public IEnumerable<FitStep> Steps(TubeAssembly assembly, IReadOnlyList<NamedCut> cuts) =>
        Enumerable
            .Range(0, assembly.Parts.Count)
            .SelectMany(part => WithRemarks([.. StepsOf(assembly, part, cuts)], assembly, part))
            .OrderBy(step =>
                assembly.Parts[step.Part] switch
                {
                    PipePart => 0,
                    BellPart or BendPart => 1,
                    HolePart => 3,
                    _ => 2,
                }
            );

    /// <summary>Whether anything is formed by heat; metal is not.</summary>
    public static bool NeedsHeat(TubeAssembly assembly) =>
        assembly
            .Parts.Select((part, i) => (part, i))
            .Any(item =>
                item.part is BellPart or BendPart && PartRemarks.IsFormedByHeat(assembly.PipeAt(item.i))
            );

    /// <summary>What the plastics stand that something is formed from; of one that is not known here, to ask its maker.</summary>
    public static IEnumerable<Caution> HeatCautions(TubeAssembly assembly) =>
        assembly
            .Parts.Where((part, i) => part is PipePart && assembly.Beside(i, 1) is BellPart or BendPart)
            .Cast<PipePart>()
            .Where(pipe => PartRemarks.IsFormedByHeat(pipe))
            .Select(pipe =>
                HeatLimits.Of(pipe.Stock?.Material) is { } limits
                    ? new Caution(CautionStep.Heating, limits.Plastic, limits.Text) { Source = limits.Source }
                    : new Caution(CautionStep.Heating, pipe.Name, FitUpWords.AskTheMaker(pipe))
            )
            .DistinctBy(caution => caution.Text);

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
    public static bool IsFormedFromOpenPipe(TubeAssembly assembly) =>
        assembly.FreePipe is not null && assembly.TrimmedEnd == PipeEnd.Lips;

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
        }

        if (tube.FreeSection >= 0 && parameter == tube.CutParameter)
        {
            return FitUpWords.CutOf(tube.SectionParts[tube.FreeSection]);
        }

        foreach (var (i, hole) in tube.Holes.Index())
        {
            if (parameter == ColumnParameter.HoleDiameter(i))
            {
                return FitUpWords.DiameterOf(hole.Hole);
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

    // What is to be known of a part follows its step, the last of them.
    private static IEnumerable<FitStep> WithRemarks(List<FitStep> steps, TubeAssembly assembly, int part) =>
        steps.Select(
            (step, i) =>
                i < steps.Count - 1
                    ? step
                    : step with
                    {
                        Remarks =
                        [
                            .. step.Remarks,
                            .. assembly
                                .Remarks.Where(remark => remark.Part == part)
                                .Select(remark => $"{SheetWords.Note}: {remark.Text}"),
                        ],
                    }
        );

    private IEnumerable<FitStep> StepsOf(TubeAssembly assembly, int i, IReadOnlyList<NamedCut> cuts)
    {
        var parts = assembly.Parts;
        var (before, after) = (assembly.Beside(i, -1), assembly.Beside(i, 1));
        switch (parts[i])
        {
            case PipePart pipe:
                var own = CutOf(i)!;
                yield return Step(FitUpWords.Cut(pipe, own), own, text => StepPicture.Cut(own, text));
                break;
            case InsertPart insert:
                var into = CutOf(assembly.PlaceBeside(i, after is null ? -1 : 1))!;
                yield return Step(
                    words.PushIn(insert, into.Pipe),
                    into,
                    text => pictures.PushIn(insert, into.Letter, after is null, text)
                );
                break;
            case JoinPart join:
                foreach (
                    var (socket, place) in new[]
                    {
                        (before is null ? null : join.Before, assembly.PlaceBeside(i, -1)),
                        (after is null ? null : join.After, assembly.PlaceBeside(i, 1)),
                    }
                )
                {
                    if (socket is not null)
                    {
                        var cut = CutOf(place)!;
                        var dry = assembly.Dry?.Joints.FirstOrDefault(joint =>
                            joint.Fitting == i && joint.Pipe == place
                        );
                        yield return Step(
                            words.PushInto(cut.Pipe, join, socket),
                            cut,
                            text => pictures.PushInto(socket, join, cut.Letter, place > i, text)
                        ) with
                        {
                            Remarks = dry is null ? [] : [dryWords.StopsShort(dry)],
                        };
                    }
                }

                break;
            case BendPart bend:
                var bent = CutOf(i)!;
                var arc = Length.FromMillimeters(bend.Radius.Millimeters * bend.Angle.Radians);
                yield return Step(
                    words.Bend(bend, bent.Pipe, Beyond(parts, i), arc),
                    bent,
                    text => pictures.Bend(bend, arc, bent.Letter, text)
                );
                break;
            case BellPart bell:
                var flared = CutOf(i)!;
                yield return Step(
                    words.Bell(bell, flared.Pipe),
                    flared,
                    text => pictures.Bell(bell, flared.Letter, text)
                );
                break;
            case HolePart hole:
                var drilled = CutOf(i)!;
                yield return Step(
                    holeWords.Drill(hole, drilled.Pipe),
                    drilled,
                    text => pictures.Drill(hole, drilled.Letter, text)
                );
                break;
            case AddedPart added:
                var beside = CutOf(assembly.PlaceBeside(i, -1)) ?? CutOf(assembly.PlaceBeside(i, 1));
                yield return Step(
                    words.PutOn(added),
                    beside,
                    text =>
                        pictures.PutOn(
                            added,
                            beside?.Letter,
                            CutOf(assembly.PlaceBeside(i, -1)) is null,
                            text
                        )
                );
                break;
        }

        FitStep Step(string text, NamedCut? cut, Func<string, Drawing> picture) =>
            new(i, text, FitUpWords.Uses(cut), picture(text), []);

        // What is formed from a pipe is that pipe.
        NamedCut? CutOf(int part)
        {
            while (part >= 0 && part < parts.Count && parts[part] is BellPart or BendPart or HolePart)
            {
                part--;
            }

            return part >= 0 && part < parts.Count && parts[part] is PipePart
                ? cuts[parts.Take(part).Count(other => other is PipePart)]
                : null;
        }
    }

    // How much of the pipe, flat, lies beyond a bend: what is straight after it and what else is formed.
    private static Length Beyond(IReadOnlyList<TubePart> parts, int bend)
    {
        var pipe = (PipePart)parts.Take(bend).Last(part => part is PipePart);
        var formed = parts.Skip(bend + 1).TakeWhile(part => part is BellPart or BendPart or HolePart);
        return Length.FromMillimeters(
            ((BendPart)parts[bend]).StraightAfter.Millimeters
                + formed.Sum(part => TubeAssembly.AlongWall(part, pipe))
        );
    }
}
