namespace AirColumn.Plots.Notebooks;

/// <summary>
/// Tells notebooks how a type shows itself. They match it by its name, so that the package needs none of theirs.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class TypeFormatterSourceAttribute(Type formatterSourceType) : Attribute
{
    public Type FormatterSourceType { get; } = formatterSourceType;
}
