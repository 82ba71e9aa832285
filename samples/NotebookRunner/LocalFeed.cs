using System.IO.Compression;
using System.Xml.Linq;

namespace NotebookRunner;

/// <summary>The packages as they are built now, in a folder that a restore can take them from.</summary>
public static class LocalFeed
{
    /// <summary>What is packed.</summary>
    public static IReadOnlyList<string> Packages { get; } =
    ["AirColumn", "AirColumn.Plots", "AirColumn.Recordings", "AirColumn.Workshop"];

    /// <summary>
    /// Packs what is built into a folder, under a version that no cache has seen: a package of a known version would be taken from
    /// there, however old.
    /// </summary>
    /// <returns>The version.</returns>
    public static string Fill(string folder)
    {
        var packed = Directory.CreateDirectory(Path.Combine(folder, "packed")).FullName;
        // All in one process: to start one takes as long as to pack.
        var projects = Packages.Select(package =>
            Path.Combine(Repository.Top, "src", package, $"{package}.csproj")
        );
        var all = Path.Combine(folder, "pack.proj");
        File.WriteAllText(
            all,
            new XElement(
                "Project",
                new XElement(
                    "Target",
                    new XAttribute("Name", "Pack"),
                    new XElement(
                        "MSBuild",
                        new XAttribute("Projects", string.Join(';', projects)),
                        new XAttribute("Targets", "Pack"),
                        new XAttribute(
                            "Properties",
                            $"NoBuild=true;_IsPacking=true;Configuration={Repository.Configuration};PackageOutputPath={packed}"
                        )
                    )
                )
            ).ToString()
        );
        Shell.Dotnet(Repository.Top, "msbuild", all);
        File.Delete(all);

        var version = $"{Repository.Version}-now{DateTime.UtcNow.Ticks}";
        foreach (var file in Directory.EnumerateFiles(packed, "*.nupkg"))
        {
            using var package = ZipFile.Open(file, ZipArchiveMode.Update);
            Renumber(
                package.Entries.Single(e => e.FullName.EndsWith(".nuspec", StringComparison.Ordinal)),
                version
            );
        }

        foreach (var file in Directory.EnumerateFiles(packed, "*.nupkg"))
        {
            var name = Path.GetFileName(file)
                .Replace($".{Repository.Version}.nupkg", $".{version}.nupkg", StringComparison.Ordinal);
            File.Move(file, Path.Combine(folder, name));
        }

        return version;
    }

    private static void Renumber(ZipArchiveEntry manifest, string version)
    {
        using var stream = manifest.Open();
        using var reader = new StreamReader(stream, leaveOpen: true);
        var text = reader
            .ReadToEnd()
            .Replace(
                $"<version>{Repository.Version}</version>",
                $"<version>{version}</version>",
                StringComparison.Ordinal
            )
            .Replace(
                $"id=\"AirColumn\" version=\"{Repository.Version}\"",
                $"id=\"AirColumn\" version=\"{version}\"",
                StringComparison.Ordinal
            );
        stream.SetLength(0);
        using var writer = new StreamWriter(stream);
        writer.Write(text);
    }
}
