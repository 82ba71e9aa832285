using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>Lets System.Text.Json write answers.</summary>
/// <typeparam name="T">The type of answer.</typeparam>
public sealed class JsonAnswerConverter<T> : JsonConverter<T>
    where T : IJsonAnswer
{
    /// <summary>Always throws: an answer cannot be read back.</summary>
    /// <param name="reader">The reader.</param>
    /// <param name="typeToConvert">The type.</param>
    /// <param name="options">The options.</param>
    /// <returns>Nothing: it always throws.</returns>
    /// <exception cref="NotSupportedException">Always.</exception>
    public override T? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException(
            $"{typeof(T).Name} is written as JSON but not read; ask the column for it again."
        );

    /// <summary>Writes an answer as an object.</summary>
    /// <param name="writer">The writer.</param>
    /// <param name="value">The answer.</param>
    /// <param name="options">The options; names and numbers do not depend on them.</param>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(value);
        writer.Object(value);
    }
}
