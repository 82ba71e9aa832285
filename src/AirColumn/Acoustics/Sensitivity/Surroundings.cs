using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// As much of a column as a parameter can change something in: the sections it shapes with one to either side, or all of it.
/// </summary>
/// <param name="Parts">Its bore, air and options.</param>
/// <param name="Compiled">What that has become, the same objects as in the column.</param>
/// <param name="Parameter">The parameter, counted from where this begins.</param>
/// <param name="FirstPart">Where its parts begin in the column.</param>
internal sealed record Surroundings(
    ColumnParts Parts,
    ColumnLine Compiled,
    ColumnParameter Parameter,
    int FirstPart
)
{
    /// <summary>
    /// Only some sections where one air fills all and nothing opens into the side, so that a gradient takes a time in proportion to the number
    /// of sections and not to its square.
    /// </summary>
    public static Surroundings Of(ColumnModel column, ColumnParameter parameter)
    {
        var (bore, compiled) = (column.Bore, column.Line);
        if (
            parameter.Sections is not var (first, last)
            || !column.Asked.Air.IsUniform
            || bore.Holes.Count + bore.Branches.Count > 0
        )
        {
            // As decided, lest the wave fronts change with the parameter.
            return new(compiled.Parts, compiled, parameter, 0);
        }

        var from = Math.Max(0, first - 1);
        var to = Math.Min(bore.Sections.Count, last + 2);
        // Steps near each other belong together.
        while (from > 0 && StepCluster.IsShort(bore.Sections[from]))
        {
            from--;
        }

        while (to < bore.Sections.Count && StepCluster.IsShort(bore.Sections[to - 1]))
        {
            to++;
        }

        var sections = compiled.Sections[from..to];
        var parts = compiled.Parts with
        {
            Bore = new Bore(sections.Select(section => section.Section), bore.FarEnd),
        };
        var before = 0;
        for (var i = 0; i < from; i++)
        {
            before += compiled.Sections[i].Parts.Length;
        }

        return new(
            parts,
            new ColumnLine
            {
                Parts = parts,
                Sections = sections,
                Steps = compiled.Steps,
                Holes = [],
                // As long as the first and the last section here stay what they are, so do the ends.
                Load = compiled.Load,
                Blown = compiled.Blown,
                Warnings = compiled.Warnings,
                Media = compiled.Media,
            },
            parameter.After(from),
            before
        );
    }
}
