namespace AirColumn.Workshop.Tubes;

/// <summary>Parts do not go together, because of one of them.</summary>
public sealed class PartException : ArgumentException
{
    internal PartException(int part, string message, Exception problem)
        : base(message, problem)
    {
        Part = part;
    }

    /// <summary>The place of the part among the parts, 0 at the blown end.</summary>
    public int Part { get; }
}
