using System.CommandLine;
using AirColumn;
using AirColumn.Workshop.Tubes;
using Shared;

namespace DroneTube;

/// <summary>Plans of tubes for the verbs.</summary>
internal static class Planned
{
    /// <summary>The plan of a tube for a note; throws where there is none.</summary>
    public static TubeBuild Build(PartsFile tube, Pitch note, RoomOptions room, ParseResult parsed)
    {
        var build = BuildIfAny(tube, note, room, parsed);
        return build.IsSolved ? build : throw new FailureException(build.ExplanationIn(Show.Units));
    }

    /// <summary>What is to be minded of several plans, each once.</summary>
    public static IReadOnlyList<string> Warnings(IEnumerable<TubeBuild> builds) =>
        [.. builds.SelectMany(build => build.WarningsIn(Show.Units)).Distinct()];

    /// <summary>The plan of a tube for a note, or why there is none.</summary>
    public static TubeBuild BuildIfAny(PartsFile tube, Pitch note, RoomOptions room, ParseResult parsed) =>
        BuildIfAny(tube.Assembly, note, room, parsed);

    /// <summary>The plan of parts for a note, or why there is none.</summary>
    public static TubeBuild BuildIfAny(TubeAssembly parts, Pitch note, RoomOptions room, ParseResult parsed)
    {
        try
        {
            return TubeBuilder.Plan(
                parts,
                note,
                room.Tuning(parsed),
                room.Air(parsed),
                cancellationToken: TimeLimitOption.Token(parsed)
            );
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem));
        }
    }
}
