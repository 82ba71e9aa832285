using System.Text.Json;

namespace AirColumn;

/// <summary>An answer that says itself in JSON, with the unit in each name: plain numbers that any language reads.</summary>
/// <remarks>
/// Types that are so carry their converter, so that a serializer writes them as they are and a web service may return them. What is not
/// finite is null. They are not read back.
/// </remarks>
public interface IJsonAnswer
{
    /// <summary>Writes the members, without the braces around them: others may be put beside them.</summary>
    /// <param name="json">Where to write, inside of an object.</param>
    void WriteMembers(Utf8JsonWriter json);
}
