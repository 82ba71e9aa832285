using System.Numerics;

namespace ColumnTool.Answers;

/// <summary>Makes the members of an answer of that type.</summary>
internal static class Fields<T>
{
    /// <summary>A finite number.</summary>
    public static Cell<T> Number(
        string name,
        string unit,
        string meaning,
        Func<T, double> value,
        string format = "G8"
    ) => new NumberCell<T>(name, unit, meaning, value, format, false);

    /// <summary>A number that may be infinite or lacking: null in JSON.</summary>
    public static Cell<T> NumberOrNull(
        string name,
        string unit,
        string meaning,
        Func<T, double> value,
        string format = "G8"
    ) => new NumberCell<T>(name, unit, meaning, value, format, true);

    /// <summary>A whole number.</summary>
    public static Cell<T> Whole(string name, string meaning, Func<T, int> value) =>
        new WholeCell<T>(name, meaning, value);

    /// <summary>A text.</summary>
    public static Cell<T> Text(string name, string meaning, Func<T, string> value) =>
        new TextCell<T>(name, meaning, value, false);

    /// <summary>A text that may be lacking: null in JSON.</summary>
    public static Cell<T> TextOrNull(string name, string meaning, Func<T, string?> value) =>
        new TextCell<T>(name, meaning, value, true);

    /// <summary>True or false.</summary>
    public static Cell<T> Flag(string name, string meaning, Func<T, bool> value) =>
        new FlagCell<T>(name, meaning, value);

    /// <summary>Real and imaginary part: their name is followed by Re and Im; without one they are re and im.</summary>
    public static IEnumerable<Cell<T>> Complex(
        string name,
        string unit,
        string meaning,
        Func<T, Complex> value
    ) =>
        [
            Number(
                name.Length == 0 ? "re" : $"{name}Re",
                unit,
                $"real part of {meaning}",
                of => value(of).Real
            ),
            Number(
                name.Length == 0 ? "im" : $"{name}Im",
                unit,
                $"imaginary part of {meaning}",
                of => value(of).Imaginary
            ),
        ];

    /// <summary>A number with its unit beside it.</summary>
    public static Field<T> Quantity(string name, string unit, string meaning, Func<T, double> value) =>
        new QuantityField<T>(name, unit, meaning, value);

    /// <summary>Several members under one name; null in JSON where there is no such thing.</summary>
    public static Field<T> Group<TPart>(
        string name,
        string meaning,
        Func<T, TPart?> part,
        params IReadOnlyList<Field<TPart>> fields
    )
        where TPart : class => new GroupField<T, TPart>(name, meaning, part, fields);

    /// <summary>A list of objects; left out of an answer where there is none.</summary>
    public static Field<T> List<TRow>(
        string name,
        string meaning,
        Func<T, IReadOnlyList<TRow>> rows,
        params IReadOnlyList<Field<TRow>> fields
    ) => new ListField<T, TRow>(name, meaning, rows, fields, false);

    /// <summary>The same, which an answer may go without.</summary>
    public static Field<T> ListOrNothing<TRow>(
        string name,
        string meaning,
        Func<T, IReadOnlyList<TRow>?> rows,
        params IReadOnlyList<Field<TRow>> fields
    ) => new ListField<T, TRow>(name, meaning, rows, fields, true);

    /// <summary>Lists of numbers side by side, all equally long.</summary>
    public static Field<T> Columns<TRow>(
        Func<T, IReadOnlyList<TRow>> rows,
        params IReadOnlyList<Cell<TRow>> columns
    ) => new ColumnsField<T, TRow>(rows, columns);

    /// <summary>A column document.</summary>
    public static Field<T> Document(string name, string meaning, Func<T, string?> json) =>
        new DocumentField<T>(name, meaning, json);
}
