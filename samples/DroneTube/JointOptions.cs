using System.CommandLine;
using AirColumn.Documents;
using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>How far the pipes were in their sockets when the tube was heard.</summary>
internal sealed class JointOptions
{
    private readonly Option<JointState?> joints = Options.Parsed<JointState?>(
        "--joints",
        "The joints when the tube was heard: dry (tapered sockets stop the pipes short) or home (pushed in to the stops, as when cemented). [default: dry]",
        text =>
            text switch
            {
                "dry" => JointState.Dry,
                "home" => JointState.Home,
                _ => throw new FormatException($"'{text}' is not known; write dry or home."),
            }
    );

    private readonly Option<Length?> stopsShort = Options.Parsed<Length?>(
        "--stops-short",
        "The measured distance by which all pipes together stop short of home while dry, such as \"16 mm\". [default: computed from the sockets]",
        text => QuantityText.ParseLength(text)
    );

    public IEnumerable<Option> All => [joints, stopsShort];

    /// <summary>The state that was given.</summary>
    public JointState State(ParseResult parsed) => parsed.GetValue(joints) ?? JointState.Dry;

    /// <summary>What was measured of it; checked against the parts.</summary>
    public Length? Measured(ParseResult parsed, TubeAssembly assembly)
    {
        if (parsed.GetValue(stopsShort) is not { } measured)
        {
            return null;
        }

        if (State(parsed) == JointState.Home)
        {
            throw new BadInputException(
                "--stops-short is about dry joints, but --joints says home; leave one of them out."
            );
        }

        if (assembly.Dry is not { } dry)
        {
            throw new BadInputException(
                "--stops-short is given, but no socket of these parts is tapered enough to stop its pipe short. Omit the option, or measure the sockets."
            );
        }

        try
        {
            _ = dry.Measured(measured);
            return measured;
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem, "--stops-short"));
        }
    }

    /// <summary>The tube as it was heard.</summary>
    public TubeAssembly Heard(ParseResult parsed, TubeAssembly assembly) =>
        AssemblyAsHeard.Of(assembly, State(parsed), Measured(parsed, assembly));
}
