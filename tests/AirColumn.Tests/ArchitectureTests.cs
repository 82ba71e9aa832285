using System.Collections;
using System.Numerics;
using System.Reflection;
using System.Runtime.CompilerServices;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnit;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace AirColumn.Tests;

/// <summary>The floors of the house: nothing points up, and those on the ground do not see each other.</summary>
public class ArchitectureTests
{
    private static readonly Architecture House = new ArchLoader()
        .LoadAssemblies(typeof(AirColumn.Acoustics.Column).Assembly)
        .Build();

    // Extension methods of Column that lie in the folders of upper layers; FolderTests watches what they name.
    private const string QuestionsOfUpperLayers =
        @"^AirColumn\.Acoustics\.(ColumnResonances|ResonanceGradients|QualityIndicators|Uncertainty)(\W|$)";

    public static TheoryData<string, string> Forbidden
    {
        get
        {
            // Each layer with all it may stand on; anything else of ours is above or beside it.
            var standsOn = new Dictionary<string, string[]>
            {
                ["Pitches"] = [],
                ["Gases"] = [],
                ["Bores"] = [],
                ["Acoustics"] = ["Gases", "Bores"],
                ["Resonances"] = ["Acoustics", "Pitches", "Gases", "Bores"],
                ["Design"] = ["Resonances", "Acoustics", "Pitches", "Gases", "Bores"],
                ["Documents"] = ["Acoustics", "Gases", "Bores"],
                ["Studies"] = ["Documents", "Resonances", "Acoustics", "Pitches", "Gases", "Bores"],
            };
            var data = new TheoryData<string, string>();
            foreach (var (layer, below) in standsOn)
            {
                foreach (var other in standsOn.Keys.Where(other => other != layer && !below.Contains(other)))
                {
                    data.Add(layer, other);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Forbidden))]
    public void No_layer_sees_one_above_or_beside_it(string layer, string other) =>
        Types()
            .That()
            .ResideInNamespaceMatching(Inside(layer))
            .And()
            .DoNotHaveFullNameMatching(QuestionsOfUpperLayers)
            .Should()
            .NotDependOnAny(Types().That().ResideInNamespaceMatching(Inside(other)))
            .Check(House);

    // So that a program finds them where it found Column.
    [Fact]
    public void What_extends_a_column_is_in_its_namespace() =>
        Assert.All(
            typeof(AirColumn.Acoustics.Column)
                .Assembly.GetExportedTypes()
                .Where(type =>
                    type.GetMethods(BindingFlags.Static | BindingFlags.Public)
                        .Any(method =>
                            method.IsDefined(typeof(ExtensionAttribute))
                            && method.GetParameters()[0].ParameterType == typeof(AirColumn.Acoustics.Column)
                        )
                ),
            type => Assert.Equal("AirColumn.Acoustics", type.Namespace)
        );

    // A rule over nothing passes nothing: every layer must be there.
    [Theory]
    [MemberData(nameof(Layers))]
    public void Every_layer_has_types(string layer) =>
        Assert.Contains(
            House.Types,
            type => type.Namespace.FullName.StartsWith($"AirColumn.{layer}", StringComparison.Ordinal)
        );

    // What a computation keeps belongs to a column; a static is written once, and holds nothing that grows.
    [Fact]
    public void No_static_changes()
    {
        var fields = typeof(AirColumn.Acoustics.Column)
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
        var types = typeof(AirColumn.Acoustics.Column).Assembly.GetTypes();
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

    public static TheoryData<string> Layers =>
        ["Pitches", "Gases", "Bores", "Acoustics", "Resonances", "Design", "Documents", "Studies"];

    private static string Inside(string layer) => $@"^AirColumn\.{layer}(\..*)?$";
}
