using System.Xml.Linq;
using NotebookRunner;

namespace Packages.Tests;

/// <summary>The maker's program, built from the packages and compiled ahead of time.</summary>
[Collection(PackedOnce.Name)]
public class AheadOfTimeTests(Packed packed)
{
    private static readonly string[] Plan =
    [
        "plan",
        "--note",
        "E2",
        "--pipe-diameter",
        "50 mm",
        "--end-adds",
        "45 mm",
        "--end-diameter",
        "63 mm",
    ];

    // The one warning is of UnitsNet, which looks its conversions up by name; any other is an error.
    [LinkerFact]
    [Trait(Amount.Trait, Amount.Long)]
    public void It_compiles_without_a_warning_of_ours_and_plans_the_same_tube()
    {
        var folder = packed.Folder("ahead");
        foreach (var file in Sources())
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        File.WriteAllText(
            Path.Combine(folder, "DroneTube.csproj"),
            $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <PublishAot>true</PublishAot>
                <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
                <WarningsNotAsErrors>IL2104</WarningsNotAsErrors>
              </PropertyGroup>
              <ItemGroup>
                <PackageReference Include="AirColumn.Recordings" Version="{packed.Session.Version}" />
                <PackageReference Include="AirColumn.Workshop" Version="{packed.Session.Version}" />
                <PackageReference Include="System.CommandLine" Version="{Pinned("System.CommandLine")}" />
              </ItemGroup>
            </Project>
            """
        );
        var said = Shell.Dotnet(
            folder,
            ["publish", "-c", "Release", "--use-current-runtime", "-o", "native", "-v", "normal"]
        );
        Assert.All(
            said.Split('\n').Where(line => line.Contains("warning IL", StringComparison.Ordinal)),
            line => Assert.Contains("IL2104: Assembly 'UnitsNet'", line, StringComparison.Ordinal)
        );
        Assert.False(File.Exists(Path.Combine(folder, "native", "DroneTube.dll")));

        var compiled = Shell.Run(Path.Combine(folder, "native", "DroneTube"), folder, Plan);
        Assert.Contains("Lengths, computed", compiled, StringComparison.Ordinal);
        var dll = Path.Combine(folder, "bin", "Release", "net10.0");
        dll = Directory.EnumerateFiles(dll, "DroneTube.dll", SearchOption.AllDirectories).First();
        Assert.Equal(Shell.Dotnet(folder, ["exec", dll, .. Plan]), compiled);
    }

    // Its own files and those that its project links.
    private static IEnumerable<string> Sources()
    {
        var program = Path.Combine(Repository.Top, "samples", "DroneTube");
        return XDocument
            .Load(Path.Combine(program, "DroneTube.csproj"))
            .Descendants("Compile")
            .Select(item => Path.GetFullPath(Path.Combine(program, (string)item.Attribute("Include")!)))
            .Prepend(Path.Combine(program, "*.cs"))
            .SelectMany(files =>
                Directory.EnumerateFiles(Path.GetDirectoryName(files)!, Path.GetFileName(files))
            );
    }

    private static string Pinned(string package) =>
        XDocument
            .Load(Path.Combine(Repository.Top, "Directory.Packages.props"))
            .Descendants("PackageVersion")
            .Single(e => (string?)e.Attribute("Include") == package)
            .Attribute("Version")!
            .Value;
}
