using AirColumn.Acoustics;

namespace AirColumn.Studies;

/// <summary>What a study changes, and which values it takes. Immutable.</summary>
public sealed class StudyParameter
{
    internal StudyParameter(ColumnParameter parameter, Spread spread)
    {
        Parameter = parameter;
        Spread = spread;
        Slug = parameter.ToString().Replace(' ', '_');
    }

    /// <summary>What is changed.</summary>
    public ColumnParameter Parameter { get; }

    /// <summary>How many values in steps; null where they are drawn from a distribution.</summary>
    public int? Steps => Spread.Steps;

    /// <summary>Its values.</summary>
    internal Spread Spread { get; }

    /// <summary>Its name in those of fields, such as length_of_section_2.</summary>
    internal string Slug { get; }

    /// <summary>What is changed, with sections, points and holes counted from 1.</summary>
    public override string ToString() => Parameter.ToString();
}
