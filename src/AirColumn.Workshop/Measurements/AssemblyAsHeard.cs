using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Measurements;

/// <summary>A tube as it was put together when it was heard.</summary>
public static class AssemblyAsHeard
{
    /// <summary>The tube with its pipes fully in their sockets, or with its pipes stopped short by tapered sockets.</summary>
    /// <param name="assembly">The parts.</param>
    /// <param name="joints">The state of the joints.</param>
    /// <param name="stopsShort">
    /// The measured distance by which all pipes together stopped short of the bottom of their sockets; null to compute it.
    /// </param>
    /// <returns>The tube.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distance is more than the depth of the sockets.</exception>
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
