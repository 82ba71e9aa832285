using System.CommandLine;

namespace DroneTube;

/// <summary>What the program can be asked to do.</summary>
internal static class Verbs
{
    public static RootCommand Root() =>
        new RootCommand("From parts on the bench to a drone tube in tune.")
        {
            PlanCommand.Create(),
            SheetCommand.Create(),
            TableCommand.Create(),
            CompareCommand.Create(),
            CutsCommand.Create(),
            TrimCommand.Create(),
            ListenCommand.Create(),
            RingCommand.Create(),
            PreviewCommand.Create(),
            StockCommand.Create(),
        };
}
