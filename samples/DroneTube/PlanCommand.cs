using System.CommandLine;
using Shared;

namespace DroneTube;

/// <summary>The verb 'plan': one pipe, its fittings and a note in, a cutting plan out.</summary>
internal static class PlanCommand
{
    public static Command Create()
    {
        var options = new PlanOptions();
        var units = UnitsOption.Create();
        var json = TableCommand.JsonOption();
        var command = new Command(
            "plan",
            "Finds how long to cut the pipe for a note, and how much to leave for trimming."
        )
        {
            json,
            units,
        };
        foreach (var option in options.All)
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            units.Apply(parsed);
            var build = options.Plan(parsed);
            var asJson = parsed.GetValue(json);
            // The page for the bench has the warnings on it.
            if (asJson || !build.IsSolved)
            {
                ConsoleProgram.Warn(parsed, Planned.Warnings([build]));
            }

            if (!build.IsSolved)
            {
                throw new FailureException(build.ExplanationIn(Show.Units));
            }

            parsed.InvocationConfiguration.Output.Write(asJson ? PlanJson.Of(build) : PlanText.Of(build));
        });
        return command;
    }
}
