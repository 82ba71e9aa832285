using System.CommandLine;
using DroneTube;
using Shared;

var root = new RootCommand("From parts on the bench to a drone tube in tune.")
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
return ConsoleProgram.Run(root, args);
