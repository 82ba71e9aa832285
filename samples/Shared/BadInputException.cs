namespace Shared;

/// <summary>The user asked for something that cannot be: one line saying what, its value and what is allowed.</summary>
internal sealed class BadInputException(string message) : Exception(message);
