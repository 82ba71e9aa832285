using System.CommandLine;
using Shared;

namespace DroneTube;

/// <summary>What the program can be asked to do.</summary>
internal static class Verbs
{
    private const string TakesLong =
        "Long tubes of many parts, wide steep bells, notes by the dozen and long recordings take long: ask for fewer of them at a time.";

    public static RootCommand Root()
    {
        var root = new RootCommand("From parts on the bench to a drone tube in tune.")
        {
            NewCommand.Create(),
            PlanCommand.Create(),
            SheetCommand.Create(),
            TemplateCommand.Create(),
            ColumnCommand.Create(),
            TableCommand.Create(),
            CompareCommand.Create(),
            CutsCommand.Create(),
            TrimCommand.Create(),
            ListenCommand.Create(),
            RingCommand.Create(),
            PreviewCommand.Create(),
            StockCommand.Create(),
        };
        foreach (
            var verb in root.Subcommands.Where(verb => verb.Name is not ("new" or "stock" or "template"))
        )
        {
            verb.Add(new TimeLimitOption(TakesLong));
        }

        return root;
    }
}
