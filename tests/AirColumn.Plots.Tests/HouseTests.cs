using System.Reflection;
using System.Runtime.CompilerServices;

namespace AirColumn.Plots.Tests;

/// <summary>What the package stands on, and the rules that hold for every public type.</summary>
public class HouseTests
{
    private static readonly Assembly Plots = typeof(Picture).Assembly;

    [Fact]
    public void Plots_stand_on_the_engine_alone() => Assert.Equal(["AirColumn"], References("AirColumn"));

    [Fact]
    public void No_notebook_package_is_needed() => Assert.Empty(References("Microsoft.DotNet.Interactive"));

    [Fact]
    public void The_plotting_library_stays_inside()
    {
        var seen = Plots
            .GetExportedTypes()
            .SelectMany(type =>
                type.GetMembers(
                    BindingFlags.Public
                        | BindingFlags.Instance
                        | BindingFlags.Static
                        | BindingFlags.DeclaredOnly
                )
            )
            .SelectMany(member =>
                member switch
                {
                    MethodBase method => method
                        .GetParameters()
                        .Select(p => p.ParameterType)
                        .Append((method as MethodInfo)?.ReturnType ?? typeof(void)),
                    PropertyInfo property => [property.PropertyType],
                    _ => [],
                }
            )
            .Select(type => type.Namespace ?? "")
            .Distinct();
        Assert.DoesNotContain(
            seen,
            name =>
                name.StartsWith("ScottPlot", StringComparison.Ordinal)
                || name.StartsWith("SkiaSharp", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Public_types_are_sealed_or_static_and_cannot_be_set() =>
        Assert.All(
            Plots.GetExportedTypes(),
            type =>
            {
                Assert.True(type.IsSealed, type.Name);
                Assert.All(
                    type.GetProperties().Where(p => p.SetMethod is { IsPublic: true }),
                    p =>
                        Assert.Contains(
                            typeof(IsExternalInit),
                            p.SetMethod!.ReturnParameter.GetRequiredCustomModifiers()
                        )
                );
            }
        );

    // The licence of the font asks that it travels with it.
    [Fact]
    public void The_font_is_in_the_assembly()
    {
        Assert.Contains(
            "AirColumn.Plots.Fonts.AtkinsonHyperlegible-Regular.ttf",
            Plots.GetManifestResourceNames()
        );
        Assert.Contains(
            "AirColumn.Plots.Fonts.AtkinsonHyperlegible-Bold.ttf",
            Plots.GetManifestResourceNames()
        );
    }

    private static IEnumerable<string> References(string start) =>
        Plots
            .GetReferencedAssemblies()
            .Select(a => a.Name!)
            .Where(name => name.StartsWith(start, StringComparison.Ordinal));
}
