using System.Reflection;
using BenchPage.Engine;

namespace BenchPage.Tubes;

/// <summary>What the bench begins with.</summary>
internal static class Starters
{
    /// <summary>The tube that DroneTube shows: the file of its folder.</summary>
    public static BenchState Drone { get; } = new(Embedded("workshop-tube.json"), "D2");

    /// <summary>A horn: a narrow mouth, a pipe and a long flared end.</summary>
    public static BenchState Horn { get; } = new(Embedded("horn.json"), "C2");

    private static string Embedded(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
