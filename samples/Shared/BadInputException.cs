namespace Shared;

/// <summary>The user asked for something that cannot be: one line saying what, its value and what is allowed.</summary>
internal sealed class BadInputException(string message, int exitCode = ConsoleProgram.BadInput)
    : Exception(message)
{
    /// <summary>With which exit code the program ends.</summary>
    public int ExitCode => exitCode;
}
