namespace Shared;

/// <summary>The standard input, which is empty if it was closed when the program began.</summary>
internal static class StandardInput
{
    private const int ClosesOnExec = 0x80000; // O_CLOEXEC of Linux

    /// <summary>What to say where something was to be read from it.</summary>
    public const string SaysClosed =
        "The standard input is closed, so nothing can be read from it; pipe something into it, or name a file.";

    private static readonly bool wasClosed = WasClosed();
    private static readonly AsyncLocal<Stream?> given = new();

    /// <summary>Whether it was closed when the program began; only Linux tells.</summary>
    public static bool IsClosed => given.Value is null && wasClosed;

    /// <summary>Opens it.</summary>
    public static Stream Open() => given.Value ?? (IsClosed ? Stream.Null : Console.OpenStandardInput());

    /// <summary>What is read in its place by a program that is run within another, from here on.</summary>
    public static void Give(Stream input) => given.Value = input;

    // The first file that the runtime opens for itself takes the place of an input that was closed, and reading it would never end. Such a file
    // closes when another program is begun; what this one was begun with did not.
    private static bool WasClosed()
    {
        const string Facts = "/proc/self/fdinfo/0";
        try
        {
            var flags = File.Exists(Facts)
                ? Array.Find(
                    File.ReadAllLines(Facts),
                    line => line.StartsWith("flags:", StringComparison.Ordinal)
                )
                : null;
            return flags is not null
                && (Convert.ToInt64(flags["flags:".Length..].Trim(), 8) & ClosesOnExec) != 0;
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException or FormatException)
        {
            return false;
        }
    }
}
