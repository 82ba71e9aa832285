using System.Globalization;
using NotebookRunner;

namespace Packages.Tests;

/// <summary>
/// The packages in a console program, a single-file script and a notebook outside the repository: what their pages show runs there and prints
/// what they say.
/// </summary>
[Collection(PackedOnce.Name)]
public class ConsumptionTests(Packed packed)
{
    private readonly string version = packed.Session.Version;

    // The first page says how to begin in an empty folder. Here the packages have another version and are there already.
    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public void The_commands_of_the_first_page_lead_to_its_figures()
    {
        var clone = packed.Folder(Path.Combine("begin", "clone"));
        Copy(
            Path.Combine(Repository.Top, "samples", "FromPackage"),
            Path.Combine(clone, "samples", "FromPackage")
        );
        Copy(packed.Session.Feed, Path.Combine(clone, "..", "my-tube", "packages"));

        var printed = "";
        foreach (var command in Page.First.Commands("dotnet new console").Skip(1))
        {
            var words = command.Replace(Repository.Version, version, StringComparison.Ordinal).Split(' ');
            printed = Shell.Run(words[0], clone, words.AsSpan(1));
        }

        Assert.StartsWith(
            "dotnet pack ",
            Page.First.Commands("dotnet new console")[0],
            StringComparison.Ordinal
        );
        Assert.Equal(Page.First.Output, printed.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void The_example_is_one_and_the_same_everywhere()
    {
        var page = Page.Of("AirColumn");
        var program = File.ReadAllText(Path.Combine(Repository.Top, "samples", "FromPackage", "Program.cs"));
        Assert.Equal(program.ReplaceLineEndings("\n"), page.Code);
        Assert.EndsWith(Page.First.Code, page.Code, StringComparison.Ordinal);
        Assert.Equal(Page.First.Output, page.Output);
    }

    // Against formulas from outside: a quarter wave of a tube of 40 by 1290 mm with the end correction 0.6133 a (levine1948), lowered by the
    // boundary layers as Kirchhoff's first order says, δ/2a·(1 + (γ − 1)/√Pr), with ν = 15.1 mm²/s, γ = 1.4, Pr = 0.71 (handbooks, from
    // memory). What that leaves out is of the order of (δ/a)², 2e-4.
    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public void A_script_finds_the_quarter_wave()
    {
        var folder = packed.Folder("script");
        var code = Page.Of("AirColumn").Code;
        var usings = code[..code.IndexOf("\n\n", StringComparison.Ordinal)];
        File.WriteAllText(
            Path.Combine(folder, "tube.cs"),
            $$"""
            #:package AirColumn@{{version}}
            {{usings}}

            var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
            var bore = Bore.Build().Cylinder(Length.FromMillimeters(40), Length.FromMillimeters(1290)).OpenEnd();
            var first = new Column(bore, air).FirstResonances(1)[0].Frequency.Hertz;
            Console.WriteLine(first.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
            Console.WriteLine(air.SpeedOfSound.MetersPerSecond.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
            """
        );
        var lines = Script(folder, "tube.cs").Split('\n');
        var (hertz, speed) = (Number(lines[0]), Number(lines[1]));
        var quarterWave = speed / (4 * (1.290 + 0.6133 * 0.020));
        var layer = Math.Sqrt(2 * 15.1e-6 / (2 * Math.PI * quarterWave));
        var lowered = quarterWave * (1 - layer / 0.040 * (1 + 0.4 / Math.Sqrt(0.71)));
        Assert.InRange(hertz / lowered, 1 - 4e-4, 1 + 4e-4);
    }

    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public void A_script_prints_what_the_page_of_the_package_shows()
    {
        var folder = packed.Folder("script");
        var page = Page.Of("AirColumn");
        File.WriteAllText(Path.Combine(folder, "example.cs"), $"#:package AirColumn@{version}\n{page.Code}");
        Assert.Equal(page.Output, Script(folder, "example.cs").ReplaceLineEndings("\n"));
    }

    // All of them in one program: their pages' examples, each in a function of its own.
    [Fact]
    public void A_console_program_prints_what_the_pages_of_all_packages_show()
    {
        var folder = packed.Folder("console");
        var references = LocalFeed.Packages.Select(package =>
            $"""<PackageReference Include="{package}" Version="{version}" />"""
        );
        File.WriteAllText(
            Path.Combine(folder, "console.csproj"),
            $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
              </PropertyGroup>
              <ItemGroup>{string.Concat(references)}</ItemGroup>
            </Project>
            """
        );
        var usings = new SortedSet<string>(StringComparer.Ordinal);
        var (calls, functions) = ("", "");
        foreach (var (package, n) in LocalFeed.Packages.Select((package, n) => (package, n)))
        {
            var lines = Page.Of(package).Code.Split('\n');
            usings.UnionWith(lines.Where(IsUsing));
            calls += $"Page{n}(); Console.WriteLine(\"--\");\n";
            functions +=
                $"static void Page{n}()\n{{\n{string.Join('\n', lines.Where(line => !IsUsing(line)))}\n}}\n";
        }

        File.WriteAllText(
            Path.Combine(folder, "Program.cs"),
            $"{string.Join('\n', usings)}\n{calls}{functions}"
        );
        var printed = Shell.Dotnet(folder, "run").ReplaceLineEndings("\n").Split("--\n");
        Assert.Equal(LocalFeed.Packages.Select(package => Page.Of(package).Output), printed[..^1]);
        Assert.True(new FileInfo(Path.Combine(folder, "impedance.svg")).Length > 1000);
    }

    // Built in the folder: else each run of the tests would leave a build of it with the user.
    private static string Script(string folder, string name) =>
        Shell.Dotnet(folder, "run", "--artifacts-path", Path.Combine(folder, "built", name), name);

    private static bool IsUsing(string line) => line.StartsWith("using ", StringComparison.Ordinal);

    private static double Number(string line) => double.Parse(line, CultureInfo.InvariantCulture);

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.EnumerateFiles(from))
        {
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        }
    }
}
