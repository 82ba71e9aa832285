using System.CommandLine;
using AirColumn.Documents;
using AirColumn.Pitches;
using AirColumn.Workshop;
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
        length => new TubeParts(length).PipeDiameter
    );

    private readonly Option<Length?> wall = Size(
        "--wall",
        "Wall thickness at the open end: of the far-end fitting if there is one, else of the pipe. [default: a thin edge]",
        length => new TubeParts(AnyLength, length).Wall
    );

    private readonly Option<Length?> mouthAdds = Adds(
        "--mouth-adds",
        "What the mouth fitting adds: the length of tube with it, less the length without it."
    );
    private readonly Option<Length?> mouthDiameter = Inside(
        "--mouth-diameter",
        "Inside diameter of the mouth fitting."
    );
    private readonly Option<Length?> endAdds = Adds(
        "--end-adds",
        "What the far-end fitting adds, measured the same way."
    );
    private readonly Option<Length?> endDiameter = Inside(
        "--end-diameter",
        "Inside diameter of the far-end fitting."
    );

    private readonly RoomOptions room = new();

    private readonly Option<double?> trimmingCents = Options.Parsed<double?>(
        "--trim-cents",
        "How many cents flat the first cut is to be, 0 to 200; --tolerance and rounding up are added. [default: 40 cents, a choice with a margin]",
        text =>
            new TubePlanOptions
            {
                TrimmingCents =
                    Options.Number(text)
                    ?? throw new FormatException($"'{text}' is not a number; write cents, such as 40."),
            }.TrimmingCents
    );

    private readonly Option<Length?> tolerance = Size(
        "--tolerance",
        "Error of measuring parts and cut, added to the first cut. [default: 2 mm]",
        length => new TubePlanOptions { MeasuringTolerance = length }.MeasuringTolerance
    );

    public IEnumerable<Option> All =>
        [
            note,
            pipeDiameter,
            wall,
            mouthAdds,
            mouthDiameter,
            endAdds,
            endDiameter,
            .. room.All,
            trimmingCents,
            tolerance,
        ];

    /// <summary>The plan that was asked for.</summary>
    /// <exception cref="BadInputException">An option is missing.</exception>
    public TubePlan Plan(ParseResult parsed)
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

        return TubePlanner.Plan(
            new TubeParts(
                pipe,
                parsed.GetValue(wall) ?? Length.Zero,
                Fitting(parsed, "mouth fitting", mouthAdds, mouthDiameter),
                Fitting(parsed, "far-end fitting", endAdds, endDiameter)
            ),
            pitch,
            room.Tuning(parsed),
            room.Air(parsed),
            TrimmingOf(parsed)
        );

        T Missing<T>(string example)
            where T : struct
        {
            missing.Add(example);
            return default;
        }
    }

    private TubePlanOptions TrimmingOf(ParseResult parsed)
    {
        var usual = new TubePlanOptions();
        return new TubePlanOptions
        {
            TrimmingCents = parsed.GetValue(trimmingCents) ?? usual.TrimmingCents,
            MeasuringTolerance = parsed.GetValue(tolerance) ?? usual.MeasuringTolerance,
        };
    }

    private static Fitting? Fitting(
        ParseResult parsed,
        string name,
        Option<Length?> adds,
        Option<Length?> diameter
    ) =>
        (parsed.GetValue(adds), parsed.GetValue(diameter)) switch
        {
            (null, null) => null,
            ({ } length, { } inside) => new Fitting(name, length, inside),
            (null, _) => throw new BadInputException(
                $"{adds.Name} is missing, e.g. {adds.Name} \"30 mm\": a {name} needs it beside {diameter.Name}"
            ),
            _ => throw new BadInputException(
                $"{diameter.Name} is missing, e.g. {diameter.Name} \"30 mm\": a {name} needs it beside {adds.Name}"
            ),
        };

    private static Option<Length?> Adds(string name, string description) =>
        Size(name, description, length => new Fitting("any", length, AnyLength).AddedLength);

    private static Option<Length?> Inside(string name, string description) =>
        Size(name, description, length => new Fitting("any", AnyLength, length).InsideDiameter);

    private static Option<Length?> Size(string name, string description, Func<Length, Length> check) =>
        Options.Parsed<Length?>(name, description, text => check(QuantityText.ParseLength(text)));
}
