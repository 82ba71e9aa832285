using System.CommandLine;
using ColumnTool;
using Shared;

var root = new RootCommand(
    "Computes what an air column does, from a column document (docs/column-document.md): for scripts and other programs."
)
{
    ImpedanceVerb.Create(),
    ResonancesVerb.Create(),
    SweepVerb.Create(),
    LengthVerb.Create(),
    AirVerb.Create(),
};
return ConsoleProgram.Run(root, args);
