using System.Globalization;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Parameters;

namespace AirColumn;

/// <summary>
/// A number that a column depends on, such as a diameter, a length, the place of a hole or the temperature. Gradients are taken with respect to
/// parameters, and searches vary them. Immutable, equal by value.
/// </summary>
/// <remarks>Values are plain numbers in SI units; <see cref="Unit"/> is the unit.</remarks>
public sealed record ColumnParameter
{
    // The kinds know nothing of this class, so that it alone has to know them.
    private readonly IColumnChange change;

    private ColumnParameter(IColumnChange change)
    {
        this.change = change;
    }

    /// <summary>The unit of the value: m, K, Pa, or an empty text for a fraction.</summary>
    public string Unit => change.Unit;

    /// <summary>The first and the last section whose shape it changes; null where it is about something else.</summary>
    internal (int First, int Last)? Sections => change.Sections;

    /// <summary>Temperature of the air, K. In an air profile, all states change by the same amount.</summary>
    public static ColumnParameter Temperature { get; } = new(new AirParameter(AirQuantity.Temperature));

    /// <summary>Relative humidity of the air, 0 to 1. In an air profile, all states change by the same amount.</summary>
    public static ColumnParameter Humidity { get; } = new(new AirParameter(AirQuantity.Humidity));

    /// <summary>Static pressure of the air, Pa.</summary>
    public static ColumnParameter Pressure { get; } = new(new AirParameter(AirQuantity.Pressure));

    /// <summary>
    /// Mole fraction of carbon dioxide in the dry part of the air, 0 to 0.1. In an air profile, all states change by the same amount.
    /// </summary>
    public static ColumnParameter CarbonDioxide { get; } = new(new AirParameter(AirQuantity.CarbonDioxide));

    /// <summary>
    /// Thickness of the wall at the rim of a free open far end, m. The effect grows as the thickness to the power 2/3, so there is no
    /// derivative at 0.
    /// </summary>
    public static ColumnParameter Wall { get; } = new(new WallParameter());

    /// <summary>The end correction given for an open blown end, m.</summary>
    public static ColumnParameter BlownCorrection { get; } = new(new BlownParameter());

    /// <summary>The factor of the losses at the wall, <see cref="ColumnOptions.LossFactor"/>: 1 is a smooth, dry, rigid wall.</summary>
    public static ColumnParameter Losses { get; } = new(new LossParameter());

    /// <summary>Inside diameter of a section where it begins, m. A cylinder becomes a cone when this diameter changes.</summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter InletDiameter(int section) =>
        new(new DiameterParameter(Index(section, nameof(section)), true, false));

    /// <summary>Inside diameter of a section where it ends, m. A cylinder becomes a cone when this diameter changes.</summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter OutletDiameter(int section) =>
        new(new DiameterParameter(Index(section, nameof(section)), false, true));

    /// <summary>Inside diameter of a section, m. Both ends change by the same amount; the value is the diameter of the inlet.</summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter Diameter(int section) =>
        new(new DiameterParameter(Index(section, nameof(section)), true, true));

    /// <summary>
    /// Inside diameter where a section ends and the next begins, m. Both diameters change by the same amount, so the two sections still meet.
    /// </summary>
    /// <param name="section">The section that ends there: 0 is at the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter JointDiameter(int section) =>
        Together(OutletDiameter(section), InletDiameter(section + 1));

    /// <summary>Length of a section, m. Its diameters stay; holes keep their distance from the blown end.</summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter SectionLength(int section) =>
        new(new LengthParameter(Index(section, nameof(section))));

    /// <summary>
    /// Length of a section, m. Its diameters stay; the last <paramref name="holesFromFarEnd"/> holes keep their distance from the far end,
    /// the others from the blown end.
    /// </summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <param name="holes">The number of holes in all.</param>
    /// <param name="holesFromFarEnd">The number of holes that keep their distance from the far end: 0 to all.</param>
    /// <returns>The parameter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public static ColumnParameter SectionLength(int section, int holes, int holesFromFarEnd)
    {
        Require.InRange(holesFromFarEnd, 0, holes, "", nameof(holesFromFarEnd));
        return holesFromFarEnd == 0
            ? SectionLength(section)
            : Together([
                SectionLength(section),
                .. Enumerable.Range(holes - holesFromFarEnd, holesFromFarEnd).Select(HolePosition),
            ]);
    }

    /// <summary>Inside diameter at a point of a <see cref="ProfileSection"/>, m.</summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <param name="point">The index of the point: 0 is the inlet.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter PointDiameter(int section, int point) =>
        new(new PointParameter(Index(section, nameof(section)), Index(point, nameof(point)), false));

    /// <summary>Place of an inner point of a <see cref="ProfileSection"/>, m from its inlet.</summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <param name="point">The index of the point: 1 is the first after the inlet.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter PointPosition(int section, int point) =>
        new(new PointParameter(Index(section, nameof(section)), Index(point, nameof(point)), true));

    /// <summary>Distance of a tone hole's axis from the blown end, m.</summary>
    /// <param name="hole">The index of the hole: 0 is nearest to the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter HolePosition(int hole) =>
        new(new HoleParameter(Index(hole, nameof(hole)), HoleDimension.Position));

    /// <summary>Diameter of a tone hole, m.</summary>
    /// <param name="hole">The index of the hole: 0 is nearest to the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter HoleDiameter(int hole) =>
        new(new HoleParameter(Index(hole, nameof(hole)), HoleDimension.Diameter));

    /// <summary>Height of a tone hole, m.</summary>
    /// <param name="hole">The index of the hole: 0 is nearest to the blown end.</param>
    /// <returns>The parameter.</returns>
    public static ColumnParameter HoleHeight(int hole) =>
        new(new HoleParameter(Index(hole, nameof(hole)), HoleDimension.Height));

    /// <summary>Several parameters of one unit that change by the same amount. Their joint value is the value of the first.</summary>
    /// <param name="parameters">At least one, all of the same unit.</param>
    /// <returns>The joint parameter.</returns>
    /// <exception cref="ArgumentException">There are none, or their units differ.</exception>
    public static ColumnParameter Together(params IReadOnlyList<ColumnParameter> parameters)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        if (parameters.Count == 0 || parameters.Any(p => p.Unit != parameters[0].Unit))
        {
            throw new ArgumentException(
                $"There are {parameters.Count} parameters together, in {string.Join(", ", parameters.Select(p => p.Unit).Distinct())}; "
                    + "give at least one, and all in the same unit.",
                nameof(parameters)
            );
        }

        return new(
            new TogetherParameter(
                new EquatableArray<IColumnChange>(parameters.Select(parameter => parameter.change))
            )
        );
    }

    /// <summary>
    /// The parameter of a name, such as "length of section 2" or "temperature of the air". It reads what <see cref="ToString"/> writes.
    /// </summary>
    /// <param name="name">The name, with sections, points and holes counted from 1. Parameters joined by "and" change together.</param>
    /// <returns>The parameter.</returns>
    /// <exception cref="ArgumentNullException">The name is null.</exception>
    /// <exception cref="FormatException">There is no such name; the message lists the names.</exception>
    public static ColumnParameter Parse(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return ParameterNames.Read(name);
    }

    /// <summary>
    /// All parameters of a column except <see cref="Losses"/>. Each section has its length, and its diameter or the diameters of its two
    /// ends or of its points. Each tone hole has its place, diameter and height. Further parameters are the wall at a free far end if it
    /// has one, the correction of a blown end, and the state of the air if it is known.
    /// </summary>
    /// <param name="column">The column.</param>
    /// <returns>The parameters, in the order of the bore.</returns>
    public static IReadOnlyList<ColumnParameter> AllOf(Column column)
    {
        ArgumentNullException.ThrowIfNull(column);
        var all = new List<ColumnParameter>();
        for (var i = 0; i < column.Bore.Sections.Count; i++)
        {
            switch (column.Bore.Sections[i])
            {
                case CylinderSection or BendSection:
                    all.Add(Diameter(i));
                    break;
                case ProfileSection profile:
                    all.AddRange(
                        Enumerable.Range(0, profile.Positions.Count).Select(point => PointDiameter(i, point))
                    );
                    break;
                default:
                    all.AddRange([InletDiameter(i), OutletDiameter(i)]);
                    break;
            }

            all.Add(SectionLength(i));
        }

        for (var i = 0; i < column.Bore.Holes.Count; i++)
        {
            all.AddRange([HolePosition(i), HoleDiameter(i), HoleHeight(i)]);
        }

        if (column.Bore.FarEnd is OpenEnd { WallMetres: > 0 })
        {
            all.Add(Wall);
        }

        if (column.Options.BlownEnd is { IsOpen: true, IsFree: false })
        {
            all.Add(BlownCorrection);
        }

        if (column.AirProfile.HasState)
        {
            all.AddRange([Temperature, Humidity, Pressure, CarbonDioxide]);
        }

        return all;
    }

    /// <summary>The value of this parameter in a column, in <see cref="Unit"/>.</summary>
    /// <param name="column">The column.</param>
    /// <returns>The value, in the parameter's unit.</returns>
    /// <exception cref="ArgumentException">The column has no such parameter.</exception>
    public double Of(Column column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return Of(column.Parts);
    }

    /// <summary>
    /// A column with other values of several parameters, set one after the other. It shares with the first column all parts that stay the same.
    /// </summary>
    /// <param name="column">The column to begin with; it is not changed.</param>
    /// <param name="values">The parameters, each with its value in its <see cref="Unit"/>.</param>
    /// <returns>A column with these values.</returns>
    /// <exception cref="ArgumentException">The column lacks a parameter, or the values make no valid column.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of the range that the column's parts allow.</exception>
    public static Column WithAll(
        Column column,
        params IEnumerable<(ColumnParameter Parameter, double Value)> values
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(values);
        var parts = column.Parts;
        foreach (var (parameter, value) in values)
        {
            ArgumentNullException.ThrowIfNull(parameter);
            parts = parameter.With(parts, value);
        }

        return column.With(parts);
    }

    /// <summary>A column with another value of this parameter. It shares with the first column all parts that stay the same.</summary>
    /// <param name="column">The column to begin with; it is not changed.</param>
    /// <param name="value">The value, in <see cref="Unit"/>.</param>
    /// <returns>A column with this value.</returns>
    /// <exception cref="ArgumentException">The column has no such parameter, or the value makes no valid column.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is out of the range that the column's parts allow.</exception>
    public Column With(Column column, double value)
    {
        ArgumentNullException.ThrowIfNull(column);
        return column.With(With(column.Parts, value));
    }

    /// <summary>A value of it for people: lengths in millimetres.</summary>
    internal string Show(double value) =>
        Unit == "m"
            ? Require.Show(Math.Round(value * 1000, 6), "mm")
            : Require.Show(Math.Round(value, 9), Unit);

    /// <summary>The same to a micrometre, or to six digits.</summary>
    internal string ShowRounded(double value) =>
        Unit == "m"
            ? Require.Show(Math.Round(value * 1000, 3), "mm")
            : Require.Show(
                double.Parse(
                    value.ToString("G6", CultureInfo.InvariantCulture),
                    CultureInfo.InvariantCulture
                ),
                Unit
            );

    /// <summary>The name of the parameter, with sections, points and holes counted from 1.</summary>
    /// <returns>The name.</returns>
    public override string ToString() => change.ToString();

    /// <summary>How far to go for a difference, in <see cref="Unit"/>: where the column is still smooth.</summary>
    internal double StepAt(in ColumnParts parts) => change.StepAt(parts);

    internal double Of(in ColumnParts parts) => change.Of(parts);

    internal ColumnParts With(in ColumnParts parts, double value) => change.With(parts, value);

    /// <summary>The same parameter of a bore that lacks so many sections at its beginning.</summary>
    internal ColumnParameter After(int sections) => new(change.After(sections));

    private static int Index(int index, string parameter) =>
        (int)Require.InRange(index, 0, int.MaxValue, "", parameter);
}
