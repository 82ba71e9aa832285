namespace AirColumn.Studies;

/// <summary>A parameter that a study changes, with its values. Immutable.</summary>
public sealed class StudyParameter
{
    internal StudyParameter(ColumnParameter parameter, Spread spread)
    {
        Parameter = parameter;
        Spread = spread;
        Slug = parameter.ToString().Replace(' ', '_');
    }

    /// <summary>The parameter that is changed.</summary>
    public ColumnParameter Parameter { get; }

    /// <summary>The number of values; null if they are drawn from a distribution.</summary>
    public int? Steps => Spread.Steps;

    /// <summary>The values of the parameter.</summary>
    internal Spread Spread { get; }

    /// <summary>Its name in those of fields, such as length_of_section_2.</summary>
    internal string Slug { get; }

    /// <summary>The name of the parameter, with sections, points and holes counted from 1.</summary>
    /// <returns>The name.</returns>
    public override string ToString() => Parameter.ToString();
}
