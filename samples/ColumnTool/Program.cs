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
foreach (var verb in root.Subcommands.Where(verb => verb.Name != "air"))
{
    verb.Add(
        new TimeLimitOption(
            "Steep or jagged profiles, many close steps and many resonances take long, most of all under the wave fronts \"automatic\" and \"multimodal\": try \"curved\", a smoother or coarser profile, or fewer resonances."
        )
    );
}

return ConsoleProgram.Run(root, args);
