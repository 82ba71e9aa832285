using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Parameters;

/// <summary>
/// What a parameter reads from the parts of a column and changes in them. Its text names it for people; kinds are records, equal by
/// value.
/// </summary>
internal interface IColumnChange : IEquatable<IColumnChange>
{
    /// <summary>The unit of the value: m, K, Pa, or an empty text for a fraction.</summary>
    string Unit { get; }

    /// <summary>The first and the last section whose shape it changes; null where it is about something else.</summary>
    (int First, int Last)? Sections => null;

    /// <summary>How far to go for a difference, in <see cref="Unit"/>: where the column is still smooth.</summary>
    /// <exception cref="ArgumentException">The column has no such parameter.</exception>
    double StepAt(in ColumnParts parts);

    /// <summary>Its value, in <see cref="Unit"/>.</summary>
    /// <exception cref="ArgumentException">The column has no such parameter.</exception>
    double Of(in ColumnParts parts);

    /// <summary>The parts with another value of it, in <see cref="Unit"/>.</summary>
    /// <exception cref="ArgumentException">The column has no such parameter, or the value makes no valid column.</exception>
    ColumnParts With(in ColumnParts parts, double value);

    /// <summary>The same of a bore that lacks so many sections at its beginning.</summary>
    IColumnChange After(int sections) => this;

    /// <summary>What it is, with sections, points and holes counted from 1: it goes into messages.</summary>
    string ToString();

    // A record is equatable with its own kind only; lists of several kinds compare them through this.
    bool IEquatable<IColumnChange>.Equals(IColumnChange? other) => Equals((object?)other);
}
