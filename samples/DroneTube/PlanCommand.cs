using System.CommandLine;
using Shared;

namespace DroneTube;

/// <summary>The verb 'plan': parts and a note in, a cutting plan out.</summary>
internal static class PlanCommand
{
    public static Command Create()
    {
        var options = new PlanOptions();
        var json = new Option<bool>("--json") { Description = "Write the plan as JSON, for other programs." };
        var command = new Command(
            "plan",
            "How long to cut the pipe for a note, and how much to leave for trimming."
        )
        {
            json,
        };
        foreach (var option in options.All)
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var plan = options.Plan(parsed);
            var asJson = parsed.GetValue(json);
            // The page for the bench has the warnings on it.
            if (asJson || !plan.IsSolved)
            {
                ConsoleProgram.Warn(parsed, plan.Warnings);
            }

            parsed.InvocationConfiguration.Output.Write(asJson ? PlanJson.Of(plan) : PlanText.Of(plan));
        });
        return command;
    }
}
