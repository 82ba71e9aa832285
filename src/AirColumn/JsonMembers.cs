using System.Numerics;
using System.Text.Json;

namespace AirColumn;

/// <summary>Members of answers in JSON.</summary>
internal static class JsonMembers
{
    /// <summary>A number; null where it is not finite, which JSON cannot say.</summary>
    public static void Number(this Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.Value(value);
    }

    /// <summary>Numbers.</summary>
    public static void Numbers(this Utf8JsonWriter json, string name, ReadOnlySpan<double> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.Value(value);
        }

        json.WriteEndArray();
    }

    /// <summary>Numbers, each made of an item.</summary>
    public static void Numbers<T>(
        this Utf8JsonWriter json,
        string name,
        ReadOnlySpan<T> items,
        Func<T, double> value
    )
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.Value(value(item));
        }

        json.WriteEndArray();
    }

    /// <summary>A complex number, an object of its two parts.</summary>
    public static void Number(this Utf8JsonWriter json, string name, Complex value)
    {
        json.WriteStartObject(name);
        json.Number("re", value.Real);
        json.Number("im", value.Imaginary);
        json.WriteEndObject();
    }

    /// <summary>Texts.</summary>
    public static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    /// <summary>Objects.</summary>
    public static void Objects<T>(
        this Utf8JsonWriter json,
        string name,
        IEnumerable<T> items,
        Action<T> writeMembers
    )
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            writeMembers(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>An answer within another.</summary>
    public static void Object(this Utf8JsonWriter json, string name, IJsonAnswer answer)
    {
        json.WritePropertyName(name);
        json.Object(answer);
    }

    /// <summary>An answer as a value.</summary>
    public static void Object(this Utf8JsonWriter json, IJsonAnswer answer)
    {
        json.WriteStartObject();
        answer.WriteMembers(json);
        json.WriteEndObject();
    }

    private static void Value(this Utf8JsonWriter json, double value)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumberValue(value);
        }
        else
        {
            json.WriteNullValue();
        }
    }
}
