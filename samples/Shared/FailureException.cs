namespace Shared;

/// <summary>The question was sound but has no answer: one line saying why.</summary>
internal sealed class FailureException(string message) : Exception(message);
