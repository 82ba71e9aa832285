namespace AirColumn.Workshop.Tubes;

/// <summary>The exception for parts that do not go together because one of them is at fault.</summary>
public sealed class PartException : ArgumentException
{
    internal PartException(int part, string message, Exception problem)
        : base(message, problem)
    {
        Part = part;
    }

    /// <summary>The index of the part: 0 is at the blown end.</summary>
    public int Part { get; }
}
