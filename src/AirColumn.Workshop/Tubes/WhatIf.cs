using AirColumn.Acoustics;
using AirColumn.Gases;
using AirColumn.Pitches;
using AirColumn.Resonances;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>What would change if something were otherwise, in plain words with numbers, each computed for the tube at hand.</summary>
public static class WhatIf
{
    /// <summary>Sentences about a tube that has been planned.</summary>
    /// <param name="build">The plan.</param>
    /// <returns>The sentences; none where the plan has no solution.</returns>
    public static IReadOnlyList<string> Of(TubeBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return build.IsSolved ? [.. Sentences(build, build.Exact)] : [];
    }

    private static IEnumerable<string> Sentences(TubeBuild build, BuiltTube exact)
    {
        var column = exact.Column;
        if (build.Air.State is { } room)
        {
            var warmer = Air.At(
                Temperature.FromDegreesCelsius(room.Temperature.DegreesCelsius + 5),
                room.Humidity,
                room.Pressure,
                room.CarbonDioxide
            );
            yield return $"In a room 5 °C (9 °F) warmer the drone is {Change(column, column.WithAir(warmer))}.";
            var breath = AirProfile.Exponential(
                AirState.ExhaledBreath,
                room,
                Length.FromMillimeters(column.Bore.Length.Millimeters / 2)
            );
            yield return $"Filled with breath that cools along the tube (to 1/e of the difference half way down, a guess) it is {Change(column, column.WithAir(breath))}.";
        }

        yield return $"A mouth end 2 mm wider inside makes it {Change(column, Wider(column, 0, 2))}.";
        var pipe = exact.Tube.FreeSection;
        yield return $"Pipe 2 mm wider inside, cut the same, makes it {Change(column, Wider(column, pipe, 2))}.";
        var without = Straight(exact);
        if (without is not null)
        {
            var (drone, second) = (Shift(without, column, 1), Shift(without, column, 2));
            yield return $"Against a straight end of the same length the bell makes the drone {SharpOrFlat(drone)} and the first overblown note {SharpOrFlat(second)}: "
                + "a short bell moves both alike, since it is short against their waves; the interval between them is made by the taper of the whole tube.";
        }

        if (column.Bore.Sections.Any(section => section is Bores.BendSection))
        {
            yield return "A bend makes the air in it move as if the tube were a little shorter there; its length is measured along the centreline.";
        }

        var quarter =
            build.Air.SpeedOfSound.MetersPerSecond / (4 * build.Tuning.FrequencyOf(build.Note).Hertz);
        var difference = 1000 * quarter - column.Bore.Length.Millimeters;
        yield return $"The quarter-wave rule c/4f says {Wording.Both(Length.FromMeters(quarter))} in all, {Wording.Both(Length.FromMillimeters(Math.Abs(difference)))} too "
            + $"{(difference < 0 ? "short" : "long")}: it knows no diameters, steps or open end.";
    }

    private static string Change(Column before, Column after) => SharpOrFlat(Shift(before, after, 1));

    private static string SharpOrFlat(double cents) =>
        double.IsNaN(cents) ? "without a resonance to compare"
        : Math.Abs(cents) < 0.05 ? "unchanged"
        : FormattableString.Invariant($"{Math.Abs(cents):0.0} cents {(cents > 0 ? "sharper" : "flatter")}");

    private static double Shift(Column before, Column after, int number)
    {
        var (a, b) = (before.FirstResonances(number), after.FirstResonances(number));
        return a.Count < number || b.Count < number
            ? double.NaN
            : Cents.Between(a[number - 1].Frequency, b[number - 1].Frequency);
    }

    // All that belongs to one part grows with it.
    private static Column Wider(Column column, int section, double millimetres)
    {
        var parameter = ColumnParameter.Diameter(section);
        return parameter.With(column, parameter.Of(column) + millimetres / 1000);
    }

    // The same tube with a straight end in place of its bell; null where it has none.
    private static Column? Straight(BuiltTube built)
    {
        var bore = built.Column.Bore;
        var last = bore.Sections.Count - 1;
        return built.Tube.SectionParts[last] is BellPart
            ? built.Column.WithBore(
                bore.WithSection(
                    last,
                    new Bores.CylinderSection(bore.Sections[last].InletDiameter, bore.Sections[last].Length)
                )
            )
            : null;
    }
}
