using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Measurements;

/// <summary>A tube as it was put together when it was heard.</summary>
public static class AssemblyAsHeard
{
    /// <summary>The tube with its joints home, or with its pipes held out by tapered sockets.</summary>
    /// <param name="assembly">The parts.</param>
    /// <param name="joints">How far the pipes were in their sockets.</param>
    /// <param name="stopsShort">How far all pipes together stopped short of home, where that was measured; computed if null.</param>
    /// <returns>The tube.</returns>
    /// <exception cref="ArgumentOutOfRangeException">That is more than the sockets are deep.</exception>
    public static TubeAssembly Of(TubeAssembly assembly, JointState joints, Length? stopsShort = null)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        return (joints, assembly.Dry) switch
        {
            (JointState.Home, _) or (_, null) => assembly,
            (_, { } dry) => (stopsShort is { } measured ? dry.Measured(measured) : dry).Tube,
        };
    }
}
