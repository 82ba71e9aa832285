using System.Text.Json;

namespace ColumnTool.Answers;

/// <summary>Writes pieces of a JSON schema.</summary>
internal static class Schema
{
    /// <summary>A value of one of these types.</summary>
    public static void Type(
        Utf8JsonWriter schema,
        string[] types,
        string? description,
        Action<Utf8JsonWriter>? more = null
    )
    {
        schema.WriteStartObject();
        if (types.Length == 1)
        {
            schema.WriteString("type", types[0]);
        }
        else
        {
            schema.WriteStartArray("type");
            foreach (var type in types)
            {
                schema.WriteStringValue(type);
            }

            schema.WriteEndArray();
        }

        if (description is not null)
        {
            schema.WriteString("description", description);
        }

        more?.Invoke(schema);
        schema.WriteEndObject();
    }

    /// <summary>The members of an object, and which of them it cannot go without; nothing else is in it.</summary>
    public static void Members(
        Utf8JsonWriter schema,
        IEnumerable<(string Name, bool IsOptional, Action<Utf8JsonWriter> Value)> members
    )
    {
        var all = members.ToList();
        schema.WriteStartObject("properties");
        foreach (var (name, _, value) in all)
        {
            schema.WritePropertyName(name);
            value(schema);
        }

        schema.WriteEndObject();
        schema.WriteStartArray("required");
        foreach (var (name, isOptional, _) in all)
        {
            if (!isOptional)
            {
                schema.WriteStringValue(name);
            }
        }

        schema.WriteEndArray();
        schema.WriteBoolean("additionalProperties", false);
    }

    /// <summary>The same of fields.</summary>
    public static IEnumerable<(string Name, bool IsOptional, Action<Utf8JsonWriter> Value)> Members(
        IEnumerable<Field> fields
    ) =>
        fields.SelectMany(field =>
            field is IColumns columns
                ? columns.Cells.Select(cell =>
                    (
                        cell.Name,
                        false,
                        (Action<Utf8JsonWriter>)(
                            schema =>
                                Type(
                                    schema,
                                    ["array"],
                                    null,
                                    items =>
                                    {
                                        items.WritePropertyName("items");
                                        cell.WriteSchema(items);
                                    }
                                )
                        )
                    )
                )
                : [(field.Name, field.IsOptional, field.WriteSchema)]
        );
}

/// <summary>A field that is several lists in JSON.</summary>
internal interface IColumns
{
    IEnumerable<Field> Cells { get; }
}
