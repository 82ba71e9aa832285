using System.CommandLine;
using DroneTube;
using Shared;

var root = new RootCommand("From parts on the bench to a drone tube in tune.") { PlanCommand.Create() };

// Without an action of its own the parser would answer an unknown verb without naming it.
root.SetAction(int (ParseResult _) => throw new BadInputException("missing a verb; allowed is plan"));
return ConsoleProgram.Run(root, args);
