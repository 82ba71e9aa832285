using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>The effects of possible changes, in words and numbers, each computed for the given tube.</summary>
public static class WhatIf
{
    /// <summary>Sentences about a tube that has been planned.</summary>
    /// <param name="build">The plan.</param>
    /// <param name="units">The units in which lengths are written.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The sentences; none if the plan has no solution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public static IReadOnlyList<string> Of(
        TubeBuild build,
        LengthUnits units,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(build);
        Require.Named(units);
        return build.IsSolved
            ? [.. Sentences(build, build.Exact, new WhatIfWords(new Sizes(units)), cancellationToken)]
            : [];
    }

    private static IEnumerable<string> Sentences(
        TubeBuild build,
        BuiltTube exact,
        WhatIfWords words,
        CancellationToken cancellationToken
    )
    {
        var column = exact.Column;
        if (build.Air.State is { } room)
        {
            const double Warmer = 5;
            if (room.Temperature.DegreesCelsius + Warmer <= 50)
            {
                var warmer = Air.At(
                    Temperature.FromDegreesCelsius(room.Temperature.DegreesCelsius + Warmer),
                    room.Humidity,
                    room.Pressure,
                    room.CarbonDioxide
                );
                yield return WhatIfWords.Warmer(
                    Warmer,
                    Shift(column, column.WithAir(warmer), 1, cancellationToken)
                );
            }

            var breath = AirProfile.Exponential(
                AirState.ExhaledBreath,
                room,
                Length.FromMillimeters(column.Bore.Length.Millimeters / 2)
            );
            yield return WhatIfWords.Breath(Shift(column, column.WithAir(breath), 1, cancellationToken));
        }

        var by = Length.FromMillimeters(2);
        var (mouth, pipe) = (exact.Tube.SectionPieces[0], exact.Tube.SectionPieces[exact.Tube.FreeSection]);
        if (mouth != pipe)
        {
            yield return words.MouthWider(by, Shift(column, Wider(exact, mouth, by), 1, cancellationToken));
        }

        yield return words.PipeWider(by, Shift(column, Wider(exact, pipe, by), 1, cancellationToken));
        if (Straight(exact) is { } without)
        {
            yield return WhatIfWords.Bell(
                Shift(without, column, 1, cancellationToken),
                Shift(without, column, 2, cancellationToken)
            );
        }

        if (column.Bore.Sections.Any(section => section is BendSection))
        {
            yield return WhatIfWords.Bend;
        }

        var rule = QuarterWaveRule.Of(build, cancellationToken);
        yield return words.QuarterWave(rule.TotalLength, rule.Difference);
    }

    private static double Shift(Column before, Column after, int number, CancellationToken cancellationToken)
    {
        var a = before.FirstResonances(number, cancellationToken);
        var b = after.FirstResonances(number, cancellationToken);
        return a.Count < number || b.Count < number
            ? double.NaN
            : Cents.Between(a[number - 1].Frequency, b[number - 1].Frequency);
    }

    private static Column Wider(BuiltTube built, int piece, Length by)
    {
        var diameter = built.Tube.DiameterOf(piece);
        return diameter.With(built.Column, diameter.Of(built.Column) + by.Meters);
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
                    new CylinderSection(bore.Sections[last].InletDiameter, bore.Sections[last].Length)
                )
            )
            : null;
    }
}
