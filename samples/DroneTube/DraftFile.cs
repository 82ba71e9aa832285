using Shared;

namespace DroneTube;

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

    /// <summary>Writes a file at once.</summary>
    public static void Write(string path, Action<Stream> write)
    {
        using var file = Begin(path, write);
        file.Keep();
    }

    /// <summary>Writes a file that takes its name when it is kept.</summary>
    public static DraftFile Begin(string path, Action<Stream> write)
    {
        var file = new DraftFile(path);
        try
        {
            file.Try(() =>
            {
                using var stream = new FileStream(file.draft, FileMode.CreateNew, FileAccess.ReadWrite);
                write(stream);
            });
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Gives it its name.</summary>
    public void Keep() => Try(() => File.Move(draft, path, true));

    /// <summary>Removes it if it was not kept.</summary>
    public void Dispose() => File.Delete(draft);

    private void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new FailureException($"'{path}' cannot be written: {problem.Message}");
        }
    }
}
