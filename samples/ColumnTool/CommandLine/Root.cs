using System.CommandLine;
using ColumnTool.Verbs;

namespace ColumnTool.CommandLine;

/// <summary>What the program can be asked to do.</summary>
internal static class Root
{
    public static RootCommand Create()
    {
        var root = new RootCommand(
            "Computes what an air column does, from a column document (docs/column-document.md): for scripts and other programs."
        );
        foreach (var verb in AllVerbs.List)
        {
            root.Add(VerbCommand.Create(verb));
        }

        root.Add(SweepCommand.Create());
        root.Add(StudyCommand.Create());
        root.Add(MergeCommand.Create());
        root.Add(LinesCommand.Create());
        root.Add(SchemaCommand.Create());
        root.Add(ReferenceCommand.Create(root));
        return root;
    }
}
