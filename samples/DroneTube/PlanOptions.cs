using System.CommandLine;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Workshop;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The options of the verb 'plan': each is checked as it is read, so that an error names the option.</summary>
internal sealed class PlanOptions
{
    private static readonly Length AnyLength = Length.FromMillimeters(30);

    private readonly Option<Pitch?> note = Options.Parsed<Pitch?>(
        "--note",
        "The drone, such as E2, F#2 or Eb2.",
        text => DroneNote.Parse(text)
    );

    private readonly Option<Length?> pipeDiameter = Size(
        "--pipe-diameter",
        "Inside diameter of the pipe, by caliper, such as \"50 mm\".",
        length => TubeAssembly.OnePipe(length).BlownDiameter
    );

    private readonly Option<Length?> wall = Size(
        "--wall",
        "Wall thickness at the open end: of the far-end fitting if there is one, else of the pipe. [default: a thin edge]",
        length => TubeAssembly.OnePipe(AnyLength, length).Wall
    );

    private readonly Option<Length?> mouthAdds = Adds(
        "--mouth-adds",
        "The length that the mouth fitting adds: the tube with it minus the tube without it."
    );
    private readonly Option<Length?> mouthDiameter = Inside(
        "--mouth-diameter",
        "Inside diameter of the mouth fitting."
    );
    private readonly Option<Length?> endAdds = Adds(
        "--end-adds",
        "The length that the far-end fitting adds, measured the same way."
    );
    private readonly Option<Length?> endDiameter = Inside(
        "--end-diameter",
        "Inside diameter of the far-end fitting."
    );

    private readonly RoomOptions room = new();

    public IEnumerable<Option> All =>
        [note, pipeDiameter, wall, mouthAdds, mouthDiameter, endAdds, endDiameter, .. room.All];

    /// <summary>The plan that was asked for.</summary>
    /// <exception cref="BadInputException">An option is missing.</exception>
    public TubeBuild Plan(ParseResult parsed)
    {
        var missing = new List<string>();
        var pitch = parsed.GetValue(note) ?? Missing<Pitch>("--note E2");
        var pipe = parsed.GetValue(pipeDiameter) ?? Missing<Length>("--pipe-diameter \"50 mm\"");
        if (missing.Count > 0)
        {
            throw new BadInputException(
                string.Join(" and ", missing.Select(option => option.Split(' ')[0]))
                    + $" {(missing.Count == 1 ? "is" : "are")} missing, e.g. {string.Join(' ', missing)}"
            );
        }

        return Planned.BuildIfAny(
            TubeAssembly.OnePipe(
                pipe,
                parsed.GetValue(wall) ?? Length.Zero,
                Fitting(parsed, "mouth fitting", mouthAdds, mouthDiameter),
                Fitting(parsed, "far-end fitting", endAdds, endDiameter)
            ),
            pitch,
            room,
            parsed
        );

        T Missing<T>(string example)
            where T : struct
        {
            missing.Add(example);
            return default;
        }
    }

    private static AddedPart? Fitting(
        ParseResult parsed,
        string name,
        Option<Length?> adds,
        Option<Length?> diameter
    ) =>
        (parsed.GetValue(adds), parsed.GetValue(diameter)) switch
        {
            (null, null) => null,
            ({ } length, { } inside) => new AddedPart(name, length, inside),
            (null, _) => throw new BadInputException(
                $"{adds.Name} is missing, e.g. {adds.Name} \"30 mm\": a {name} needs it beside {diameter.Name}"
            ),
            _ => throw new BadInputException(
                $"{diameter.Name} is missing, e.g. {diameter.Name} \"30 mm\": a {name} needs it beside {adds.Name}"
            ),
        };

    private static Option<Length?> Adds(string name, string description) =>
        Size(name, description, length => new AddedPart("any", length, AnyLength).Adds);

    private static Option<Length?> Inside(string name, string description) =>
        Size(name, description, length => new AddedPart("any", AnyLength, length).Inside);

    private static Option<Length?> Size(string name, string description, Func<Length, Length> check) =>
        Options.Parsed<Length?>(name, description, text => check(QuantityText.ParseLength(text)));
}
