using System.Reflection;

namespace AirColumn.Tests;

/// <summary>House rules that hold for every public type.</summary>
public class ConsistencyTests
{
    private static IEnumerable<Type> PublicTypes => typeof(AirColumn.Column).Assembly.GetExportedTypes();

    [Fact]
    public void Public_types_have_no_public_fields_but_constants() =>
        Assert.Empty(
            PublicTypes
                .Where(type => !type.IsEnum)
                .SelectMany(type =>
                    type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static)
                )
                .Where(field => !field.IsLiteral)
                .Select(field => $"{field.DeclaringType}.{field.Name}")
        );

    [Fact]
    public void Public_properties_cannot_be_set_after_construction() =>
        Assert.Empty(
            PublicTypes
                .SelectMany(type =>
                    type.GetProperties(
                        BindingFlags.Public
                            | BindingFlags.Instance
                            | BindingFlags.Static
                            | BindingFlags.DeclaredOnly
                    )
                )
                .Where(property =>
                    property.SetMethod is { IsPublic: true } setter
                    && !setter
                        .ReturnParameter.GetRequiredCustomModifiers()
                        .Contains(typeof(System.Runtime.CompilerServices.IsExternalInit))
                )
                .Select(property => $"{property.DeclaringType}.{property.Name}")
        );

    [Fact]
    public void Classes_are_sealed_abstract_or_static() =>
        Assert.Empty(
            PublicTypes
                .Where(type => type is { IsClass: true, IsSealed: false, IsAbstract: false })
                .Select(type => type.FullName)
        );

    [Fact]
    public void No_type_has_more_than_25_members_of_its_own()
    {
        var crowded = PublicTypes
            .Where(type => OwnMembers(type).Count() > 25)
            .Select(type => type.FullName)
            .ToList();
        Assert.Empty(crowded);
    }

    private static IEnumerable<string> OwnMembers(Type type) =>
        type.GetMembers(
                BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly
            )
            .Where(member => member is not MethodInfo { IsSpecialName: true })
            .Select(member => member.Name)
            .Except(["Equals", "GetHashCode", "ToString", "<Clone>$", "Deconstruct", ".ctor"])
            .Distinct();
}
