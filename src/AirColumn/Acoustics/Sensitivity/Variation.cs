using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// A column a little to either side of itself in one parameter: what its walls, gases and masses change by is taken from four such
/// columns, by a difference of fourth order. These are smooth real functions, so that it is good to about 1e-12; what the waves
/// make of them is not left to differences.
/// </summary>
internal sealed class Variation
{
    private static readonly int[] Middle = [-2, -1, 1, 2];

    // In twelfths of a step; the first is the weight of the column itself.
    private static readonly double[] MiddleWeights = [0, 1, -8, 8, -1];
    private static readonly int[] Beyond = [1, 2, 3, 4];
    private static readonly double[] BeyondWeights = [-25, 48, -36, 16, -3];

    private Variation(double weight, double[] weights, List<Change<LinePart>> parts, ColumnLine[] columns)
    {
        (Weight, Weights, Parts) = (weight, weights, parts);
        Lines = columns;
        Loads = [.. columns.Select(column => column.Load)];
        Blown = [.. columns.Select(column => column.Blown)];
    }

    /// <summary>The weight of the column itself in the difference, 1 over the unit of the parameter.</summary>
    public double Weight { get; }

    /// <summary>The weights of the others.</summary>
    public double[] Weights { get; }

    /// <summary>The parts that the parameter changes, as they are in the others.</summary>
    public IReadOnlyList<Change<LinePart>> Parts { get; }

    /// <summary>The others.</summary>
    public IReadOnlyList<ColumnLine> Lines { get; }

    /// <summary>What ends the others.</summary>
    public Termination[] Loads { get; }

    /// <summary>What lies outside their blown ends.</summary>
    public InputTermination[] Blown { get; }

    /// <summary>Varies a column.</summary>
    /// <exception cref="ArgumentException">The column has no such parameter, or does not change smoothly with it on either side of its value.</exception>
    public static Variation Of(ColumnModel column, ColumnParameter parameter)
    {
        var parts = column.Asked;
        var value = parameter.Of(parts);
        var step = parameter.StepAt(parts);
        var around = Surroundings.Of(column, parameter);
        for (var attempt = 0; step > 0 && attempt < 3; attempt++, step /= 10)
        {
            // At an end of the range, and where something would overlap, to one side.
            var found =
                Try(column, around, value, step, Middle, MiddleWeights)
                ?? Try(column, around, value, step, Beyond, BeyondWeights)
                ?? Try(column, around, value, -step, Beyond, BeyondWeights);
            if (found is not null)
            {
                return found;
            }
        }

        throw new ArgumentException(
            $"The {parameter} is {parameter.Show(value)}. On neither side of this value does the column change smoothly "
                + "with the parameter, so there is no derivative. Give it another value or leave it out."
                + (
                    HasOpeningAtJoint(parts.Bore, step)
                        ? " A hole or branch lies just where two sections meet: move it or the joint a little."
                        : ""
                ),
            nameof(parameter)
        );
    }

    private static bool HasOpeningAtJoint(Bore bore, double step)
    {
        var joint = 0.0;
        foreach (var section in bore.Sections)
        {
            joint += section.LengthMetres;
            if (
                bore.Holes.Any(hole => Math.Abs(hole.PositionMetres - joint) <= 2 * Math.Abs(step))
                || bore.Branches.Any(branch => Math.Abs(branch.PositionMetres - joint) <= 2 * Math.Abs(step))
            )
            {
                return true;
            }
        }

        return false;
    }

    private static Variation? Try(
        ColumnModel column,
        Surroundings around,
        double value,
        double step,
        int[] offsets,
        double[] weights
    )
    {
        var columns = new ColumnLine[offsets.Length];
        for (var i = 0; i < offsets.Length; i++)
        {
            try
            {
                var parts = around.Parameter.With(around.Parts, value + offsets[i] * step);
                columns[i] = LineBuilder.Compile(parts, around.Compiled);
            }
            catch (ArgumentException)
            {
                return null;
            }
        }

        var unit = 12 * step;
        return Changes(column, around, columns) is { } changes
            ? new Variation(
                weights[0] / unit,
                [.. weights[1..].Select(weight => weight / unit)],
                changes,
                columns
            )
            : null;
    }

    // Section by section where there are no holes to be open or closed, so that those that are shared cost nothing. Null where the columns
    // are not made alike.
    private static List<Change<LinePart>>? Changes(
        ColumnModel column,
        Surroundings around,
        ColumnLine[] others
    )
    {
        var changes = new List<Change<LinePart>>();
        var compiled = around.Compiled;
        if (compiled.Holes.Count > 0)
        {
            var open = column.Options.Fingering.ForHoles(compiled.Holes.Count, nameof(column));
            return Add(changes, 0, column.Way, Array.ConvertAll(others, other => other.Fingered(open)))
                ? changes
                : null;
        }

        var first = around.FirstPart;
        for (var i = 0; i < compiled.Sections.Length; i++)
        {
            var section = compiled.Sections[i];
            if (
                Array.Exists(others, other => !ReferenceEquals(other.Sections[i], section))
                && !Add(
                    changes,
                    first,
                    section.Parts,
                    Array.ConvertAll(others, other => other.Sections[i].Parts)
                )
            )
            {
                return null;
            }

            first += section.Parts.Length;
        }

        return changes;
    }

    private static bool Add(List<Change<LinePart>> changes, int first, LinePart[] parts, LinePart[][] others)
    {
        var aligned = Array.ConvertAll(others, other => Aligned(parts, other));
        if (Array.Exists(aligned, other => other is null))
        {
            return false;
        }

        for (var i = 0; i < parts.Length; i++)
        {
            if (Array.Exists(aligned, other => !ReferenceEquals(other![i], parts[i])))
            {
                changes.Add(new Change<LinePart>(first + i, Array.ConvertAll(aligned, other => other![i])));
            }
        }

        return true;
    }

    // Those of the other column in the places of this one's. The mass of a step comes and goes with it, to second order: where only one
    // column has it, there is nothing to say. Null where more differs than that.
    private static LinePart?[]? Aligned(LinePart[] parts, LinePart[] others)
    {
        var aligned = new LinePart?[parts.Length];
        var n = 0;
        for (var i = 0; i < aligned.Length; i++)
        {
            if (n < others.Length && ReferenceEquals(others[n], parts[i]))
            {
                aligned[i] = others[n++];
                continue;
            }

            if (n < others.Length && others[n] is SeriesMass && parts[i] is not SeriesMass)
            {
                n++;
            }

            if (n < others.Length && others[n].GetType() == parts[i].GetType())
            {
                aligned[i] = others[n++];
            }
            else if (parts[i] is not SeriesMass)
            {
                return null;
            }
        }

        return n == others.Length ? aligned : null;
    }
}

/// <summary>A part of a column that a parameter changes.</summary>
/// <param name="Index">Where among its like.</param>
/// <param name="Parts">As it is in the other columns; null where it is not there.</param>
internal readonly record struct Change<T>(int Index, T?[] Parts)
    where T : class;
