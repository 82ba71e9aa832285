using System.CommandLine;

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
            parsed.InvocationConfiguration.Output.Write(
                parsed.GetValue(json) ? PlanJson.Of(plan) : PlanText.Of(plan)
            );
        });
        return command;
    }
}
