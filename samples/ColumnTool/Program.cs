using System.CommandLine;
using ColumnTool.CommandLine;
using ColumnTool.Verbs;
using Shared;

var root = new RootCommand(
    "Computes what an air column does, from a column document (docs/column-document.md): for scripts and other programs."
);
foreach (var verb in AllVerbs.List)
{
    root.Add(VerbCommand.Create(verb));
}

root.Add(SweepCommand.Create());
root.Add(LinesCommand.Create());
root.Add(SchemaCommand.Create());
root.Add(ReferenceCommand.Create(root));
return ConsoleProgram.Run(root, args);
