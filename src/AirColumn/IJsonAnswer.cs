using System.Text.Json;

namespace AirColumn;

/// <summary>An answer that writes itself as JSON: plain numbers, with the unit in each name.</summary>
/// <remarks>
/// The types of answers carry their converter. So a serializer writes answers as they are, and a web service may return them. A number that
/// is not finite becomes null. Answers cannot be read back.
/// </remarks>
public interface IJsonAnswer
{
    /// <summary>Writes the members without the braces around them, so that a caller can add others.</summary>
    /// <param name="json">The writer, inside an object.</param>
    void WriteMembers(Utf8JsonWriter json);
}
