namespace Shared;

/// <summary>A file that is written under a name of its own first: a failure leaves the old one as it was, and nothing behind.</summary>
internal sealed class DraftFile : IDisposable
{
    private readonly string path;
    private readonly string draft;

    private DraftFile(string path)
    {
        this.path = path;
        draft = $"{path}.{Path.GetRandomFileName()}";
    }

    /// <summary>Writes a file that takes its name when it is kept.</summary>
    /// <exception cref="FailureException">It cannot be written.</exception>
    public static DraftFile Begin(string path, Action<Stream> write)
    {
        var file = new DraftFile(path);
        try
        {
            file.Try(() =>
            {
                using var stream = new FileStream(file.draft, FileMode.CreateNew, FileAccess.ReadWrite);
                write(stream);
                // On the disk before it has its name: a machine that dies leaves no file with a name and half of its content.
                stream.Flush(flushToDisk: true);
            });
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Gives it its name, in one step.</summary>
    /// <param name="overwrite">Whether a file of that name gives way; a link stays, and what it leads to gives way.</param>
    /// <exception cref="FailureException">It cannot be written.</exception>
    public void Keep(bool overwrite) =>
        Try(() => File.Move(draft, overwrite ? Linked(path) : path, overwrite));

    /// <summary>Removes it if it was not kept.</summary>
    public void Dispose()
    {
        try
        {
            File.Delete(draft);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // What could not be made, or can no longer be reached, must not hide why.
        }
    }

    private static string Linked(string path) =>
        (File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true) : null)?.FullName ?? path;

    private void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new FailureException(
                $"'{path}' cannot be written: {problem.Message.Replace(draft, path, StringComparison.Ordinal)}"
            );
        }
    }
}
