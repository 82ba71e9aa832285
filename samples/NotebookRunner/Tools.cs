namespace NotebookRunner;

/// <summary>The tools of a manifest.</summary>
public static class Tools
{
    /// <summary>Restores the tools of the manifest in a folder, one process after the other: two at once trip over each other's packages.</summary>
    /// <exception cref="InvalidOperationException">It failed; the message holds what it said.</exception>
    public static void Restore(string folder)
    {
        using var turn = new Mutex(
            false,
            "AirColumn.Tools.Restore",
            new NamedWaitHandleOptions { CurrentUserOnly = true, CurrentSessionOnly = false }
        );
        try
        {
            turn.WaitOne();
        }
        catch (AbandonedMutexException)
        {
            // The other one was stopped; the turn is ours.
        }

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
