using System.CommandLine;

namespace Shared;

/// <summary>The options that name the file a verb writes: nothing is written over that is there, unless by force.</summary>
internal sealed class OutputFile
{
    private readonly string[] kinds;

    /// <summary>Makes the options.</summary>
    /// <param name="option">The name of the one that names the file.</param>
    /// <param name="description">Of that option.</param>
    /// <param name="kinds">How its name may end, such as ".html".</param>
    public OutputFile(string option, string description, params string[] kinds)
    {
        this.kinds = kinds;
        Name = new Option<string?>(option) { Description = description };
    }

    /// <summary>Names the file.</summary>
    public Option<string?> Name { get; }

    /// <summary>Whether a file that is there is written over.</summary>
    public Option<bool> Force { get; } = new("--force") { Description = "Replace an existing file." };

    /// <summary>Checks a name before anything is computed.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="path">The file to write.</param>
    /// <param name="parts">Files that are read, which are never written over.</param>
    /// <exception cref="BadInputException">Nothing may or can be written there.</exception>
    public string Checked(ParseResult parsed, string path, params IEnumerable<string> parts)
    {
        if (path.Length == 0)
        {
            throw new BadInputException($"{Name.Name} is empty; name a file.");
        }

        if (parts.FirstOrDefault(read => IsSame(read, path)) is { } own)
        {
            throw new BadInputException(
                $"{Name.Name} would be the parts file itself, '{own}'; name another file."
            );
        }

        if (!kinds.Any(kind => path.EndsWith(kind, StringComparison.OrdinalIgnoreCase)))
        {
            throw new BadInputException(
                $"{Name.Name} is '{path}'; the name must end in {string.Join(" or ", kinds)}, such as '{Path.ChangeExtension(path, kinds[0])}'."
            );
        }

        if (Directory.Exists(path))
        {
            throw new BadInputException($"'{path}' is a folder; name a file with {Name.Name}.");
        }

        if (Path.GetDirectoryName(path) is { Length: > 0 } folder && !Directory.Exists(folder))
        {
            throw new BadInputException(
                $"There is no folder '{folder}'; make it first, or name another file with {Name.Name}."
            );
        }

        return File.Exists(path) && !parsed.GetValue(Force)
            ? throw new BadInputException(
                $"'{path}' is there already; --force writes over it, or name another file with {Name.Name}."
            )
            : path;
    }

    /// <summary>Writes a file whose name was checked, all of it or nothing.</summary>
    /// <exception cref="FailureException">It cannot be written, or is there since it was checked.</exception>
    public void Write(ParseResult parsed, string path, Action<Stream> write)
    {
        using var file = DraftFile.Begin(path, write);
        file.Keep(parsed.GetValue(Force));
    }

    private static bool IsSame(string read, string path) =>
        read != "-" && Path.GetFullPath(read) == Path.GetFullPath(path);
}
