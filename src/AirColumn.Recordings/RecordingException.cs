namespace AirColumn.Recordings;

/// <summary>The exception for a file that does not hold readable sound; the message says why and what to do.</summary>
public sealed class RecordingException : Exception
{
    /// <summary>Says what is wrong.</summary>
    /// <param name="message">One or two sentences.</param>
    public RecordingException(string message)
        : base(message) { }

    /// <summary>Says what is wrong, with the exception that revealed it.</summary>
    /// <param name="message">One or two sentences.</param>
    /// <param name="innerException">The exception that revealed it.</param>
    public RecordingException(string message, Exception innerException)
        : base(message, innerException) { }

    /// <summary>Says only that a recording cannot be read.</summary>
    public RecordingException()
        : this("The recording cannot be read.") { }
}
