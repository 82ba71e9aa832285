using System.CommandLine;

namespace ColumnTool;

/// <summary>The option that asks for JSON instead of a table.</summary>
internal static class JsonSwitch
{
    public static Option<bool> Create() => new("--json") { Description = "Print JSON instead of a table." };
}
