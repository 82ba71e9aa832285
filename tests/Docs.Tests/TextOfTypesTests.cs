using System.Reflection;
using AirColumn;
using AirColumn.Plots;
using AirColumn.Recordings;
using AirColumn.Workshop;

namespace Docs.Tests;

/// <summary>What a console, a log or a debugger shows of a value.</summary>
public class TextOfTypesTests
{
    private static readonly Assembly[] Packages =
    [
        typeof(Column).Assembly,
        typeof(Cautions).Assembly,
        typeof(Recording).Assembly,
        typeof(Picture).Assembly,
    ];

    private static readonly string[] JudgedExceptions =
    [
        // Serializers make them; nobody looks at one.
        "AirColumn.Documents.ColumnDocument+Converter",
        "AirColumn.JsonAnswerConverter`1",
        // Abstract: each kind has its own.
        "AirColumn.AirProfile",
        "AirColumn.BoreMeasurement",
    ];

    [Fact]
    public void A_value_shows_more_than_the_name_of_its_type() =>
        Assert.Equal(
            JudgedExceptions.Order(StringComparer.Ordinal),
            Packages
                .SelectMany(package => package.GetExportedTypes())
                .Where(type => !type.IsInterface && !type.IsEnum && !(type.IsAbstract && type.IsSealed))
                .Where(type => !type.IsSubclassOf(typeof(Delegate)) && !type.IsSubclassOf(typeof(Exception)))
                .Where(type =>
                    type.GetMethod(nameof(ToString), Type.EmptyTypes)!.DeclaringType is { } by
                    && (by == typeof(object) || by == typeof(ValueType))
                )
                .Select(type => type.FullName!)
                .Order(StringComparer.Ordinal)
        );
}
