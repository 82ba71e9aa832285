using System.Collections;
using System.Numerics;
using System.Reflection;
using System.Runtime.CompilerServices;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace AirColumn.Tests;

/// <summary>Rules that hold for all types of the engine. Which layer may name which is in <see cref="FolderTests"/>.</summary>
public class ArchitectureTests
{
    private static readonly Architecture House = new ArchLoader()
        .LoadAssemblies(typeof(Column).Assembly)
        .Build();

    // So that a program finds them where it found Column.
    [Fact]
    public void What_extends_a_column_is_in_its_namespace() =>
        Assert.All(
            typeof(Column)
                .Assembly.GetExportedTypes()
                .Where(type =>
                    type.GetMethods(BindingFlags.Static | BindingFlags.Public)
                        .Any(method =>
                            method.IsDefined(typeof(ExtensionAttribute))
                            && method.GetParameters()[0].ParameterType == typeof(Column)
                        )
                ),
            type => Assert.Equal("AirColumn", type.Namespace)
        );

    // What a computation keeps belongs to a column; a static is written once, and holds nothing that grows.
    [Fact]
    public void No_static_changes()
    {
        var fields = typeof(Column)
            .Assembly.GetTypes()
            .Where(type => !type.IsDefined(typeof(CompilerGeneratedAttribute)))
            .SelectMany(type =>
                type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)
            )
            .Where(field => field is { IsLiteral: false })
            .ToArray();
        Assert.True(fields.Length > 20);
        Assert.DoesNotContain(
            fields,
            field =>
                !field.IsInitOnly
                || field.FieldType is { IsArray: false } type
                    && type.GetInterfaces().Any(one => one == typeof(IDictionary) || one == typeof(IList))
        );
    }

    // The interpreter of browsers hands a vector wrongly through a delegate that takes it by value (see VectorFunction).
    [Fact]
    public void No_delegate_takes_a_vector_by_value()
    {
        const BindingFlags all =
            BindingFlags.DeclaredOnly
            | BindingFlags.Static
            | BindingFlags.Instance
            | BindingFlags.Public
            | BindingFlags.NonPublic;
        var types = typeof(Column).Assembly.GetTypes();
        var delegates = types
            .SelectMany(type =>
                type.GetFields(all)
                    .Select(field => field.FieldType)
                    .Concat(
                        type.GetMembers(all)
                            .OfType<MethodBase>()
                            .SelectMany(method => method.GetParameters())
                            .Select(parameter => parameter.ParameterType)
                    )
            )
            .Concat(types)
            .Where(type => type.IsSubclassOf(typeof(MulticastDelegate)))
            .ToHashSet();
        Assert.Contains(delegates, type => type.Name.StartsWith("VectorFunction", StringComparison.Ordinal));
        Assert.DoesNotContain(
            delegates,
            type =>
                Array.Exists(
                    type.GetMethod("Invoke")!.GetParameters(),
                    parameter => HoldsVector(parameter.ParameterType)
                )
        );

        static bool HoldsVector(System.Type type) =>
            type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Vector<>)
            || type is { IsValueType: true, IsPrimitive: false, IsGenericParameter: false }
                && Array.Exists(
                    type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic),
                    field => field.FieldType != type && HoldsVector(field.FieldType)
                );
    }

    // Quantities at the edge only: where waves are carried numbers are plain SI.
    [Theory]
    [InlineData("Vectors")]
    [InlineData("Interpolation")]
    [InlineData("Losses")]
    [InlineData("Junctions")]
    [InlineData("Propagation")]
    [InlineData("Multimodal")]
    [InlineData("Spectra")]
    [InlineData("Sensitivity")]
    public void Waves_are_carried_without_quantities(string folder)
    {
        var types = House
            .Types.Where(type => type.Namespace.FullName == $"AirColumn.Acoustics.{folder}")
            .ToArray();
        Assert.NotEmpty(types);
        Assert.DoesNotContain(
            types,
            type =>
                type.Dependencies.Any(d => d.Target.FullName.StartsWith("UnitsNet", StringComparison.Ordinal))
        );
    }
}
