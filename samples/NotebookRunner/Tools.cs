namespace NotebookRunner;

/// <summary>The tools of a manifest.</summary>
public static class Tools
{
    /// <summary>Restores the tools of the manifest in a folder, one process after the other: two at once trip over each other's packages.</summary>
    /// <exception cref="InvalidOperationException">It failed; the message holds what it said.</exception>
    public static void Restore(string folder)
    {
        using var turn = new Mutex(false, @"Global\AirColumn.Tools.Restore");
        turn.WaitOne();
        try
        {
            Shell.Dotnet(folder, "tool", "restore");
        }
        finally
        {
            turn.ReleaseMutex();
        }
    }
}
