namespace NotebookRunner;

/// <summary>
/// A folder outside the repository in which notebooks and programs run with the packages as they are built now. Folder and packages are gone
/// when it is disposed of.
/// </summary>
public sealed class Session : IDisposable
{
    private Session(string folder)
    {
        Folder = folder;
        try
        {
            File.Copy(
                Path.Combine(Repository.Top, ".config", "dotnet-tools.json"),
                Path.Combine(folder, "dotnet-tools.json")
            );
            Tools.Restore(folder);
            Version = LocalFeed.Fill(Directory.CreateDirectory(Feed).FullName);
            File.WriteAllText(
                Path.Combine(folder, "nuget.config"),
                """<configuration><packageSources><add key="here" value="feed" /></packageSources></configuration>"""
            );
        }
        catch
        {
            // Nobody gets it, so nobody could dispose of it.
            Directory.Delete(folder, recursive: true);
            throw;
        }
    }

    /// <summary>The folder; the packages lie in its feed.</summary>
    public string Folder { get; }

    /// <summary>The packages.</summary>
    public string Feed => Path.Combine(Folder, "feed");

    /// <summary>Their version, which there is nowhere else.</summary>
    public string Version { get; }

    public static Session Begin() => new(Directory.CreateTempSubdirectory("aircolumn-notebooks-").FullName);

    /// <summary>Runs a notebook without a screen.</summary>
    /// <returns>The notebook with what it shows.</returns>
    /// <exception cref="InvalidOperationException">A cell failed.</exception>
    public Notebook Run(Notebook notebook)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        var (source, result) = (Path.Combine(Folder, "in.ipynb"), Path.Combine(Folder, "out.ipynb"));
        notebook.WithVersion(Version).Write(source);
        File.Delete(result);
        string[] run =
        [
            "--run",
            source,
            "--exit-after-run",
            "--output-format",
            "ipynb",
            "--output-path",
            result,
        ];
        try
        {
            Shell.Dotnet(Folder, ["tool", "run", "dotnet-repl", "--", .. run]);
        }
        catch (InvalidOperationException failed) when (File.Exists(result))
        {
            // The tool itself does not say why; the cells do.
            var why = Notebook.Read(result).Errors;
            throw new InvalidOperationException(string.Join('\n', why), failed);
        }

        return Notebook.Read(result);
    }

    public void Dispose()
    {
        Directory.Delete(Folder, recursive: true);
        // The restore has unpacked our version into the cache, where nobody will ask for it again.
        var cache =
            Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(
                Environment.GetFolderPath(Environment.SpecialFolder.UserProfile),
                ".nuget",
                "packages"
            );
        foreach (var package in LocalFeed.Packages)
        {
            var unpacked = Path.Combine(cache, package.ToLowerInvariant(), Version);
            if (Directory.Exists(unpacked))
            {
                Directory.Delete(unpacked, recursive: true);
            }
        }
    }
}
