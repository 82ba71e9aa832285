using System.CommandLine;
using System.Text.Json;
using ColumnTool.Answers;
using ColumnTool.Lines;
using ColumnTool.Questions;
using ColumnTool.Verbs;
using Shared;

namespace ColumnTool.CommandLine;

/// <summary>schema: JSON schemas of the lines that are read and written, from what the verbs are made of.</summary>
internal static class SchemaCommand
{
    private const string Dialect = "https://json-schema.org/draft/2020-12/schema";

    public static Command Create()
    {
        var which = new Argument<string>("LINES") { Description = "requests or answers." };
        which.AcceptOnlyFromAmong("requests", "answers");
        var command = new Command(
            "schema",
            "Prints the JSON schema of a line of requests or of answers. The schema of answers also holds the schema of each answer of --json."
        )
        {
            which,
        };
        command.SetAction(parsed =>
            Answer.Write(
                parsed,
                output =>
                    output.Write(
                        JsonText.Of(parsed.GetRequiredValue(which) == "requests" ? Requests : Replies)
                    )
            )
        );
        return command;
    }

    private static void Requests(Utf8JsonWriter schema)
    {
        Begin(schema, "A line that asks ColumnTool", "verb");
        schema.WriteStartObject("properties");
        Id(schema, "id", ["number", "string"]);
        schema.WritePropertyName("verb");
        Schema.Type(
            schema,
            ["string"],
            "what is asked",
            more => more.Texts("enum", [.. AllVerbs.Names, LineServer.Cancel])
        );
        schema.WriteEndObject();
        schema.Texts("required", ["id", "verb"]);
        ForEachVerb(schema, [.. AllVerbs.Names, LineServer.Cancel]);
        schema.WriteStartObject("$defs");
        foreach (var verb in AllVerbs.List)
        {
            schema.WritePropertyName(verb.Name);
            Schema.Type(schema, ["object"], verb.Summary, inside => Request(inside, verb));
        }

        schema.WritePropertyName(LineServer.Cancel);
        Schema.Type(
            schema,
            ["object"],
            "Cancels a question that has not been answered yet.",
            inside =>
                Schema.Members(
                    inside,
                    [
                        ("id", false, Anything),
                        ("verb", false, Anything),
                        (
                            "question",
                            false,
                            s => Schema.Type(s, ["number", "string"], "the id of the question to take back")
                        ),
                    ]
                )
        );
        schema.WriteEndObject();
    }

    private static void Request(Utf8JsonWriter schema, Verb verb)
    {
        List<(string, bool, Action<Utf8JsonWriter>)> members =
        [
            ("id", false, Anything),
            ("verb", false, Anything),
            (
                "timeLimit",
                true,
                s => Lines.Request.Seconds.WriteSchema(s, "the seconds it may take before it is cancelled")
            ),
        ];
        if (verb.IsAboutColumn)
        {
            members.Add(("document", true, s => Schema.Type(s, ["object"], "a column document")));
            members.Add(
                (
                    "file",
                    true,
                    s =>
                        Schema.Type(
                            s,
                            ["string"],
                            "the name of a column document",
                            more => more.WriteNumber("minLength", 1)
                        )
                )
            );
        }

        members.AddRange(
            verb.Parameters.Select(parameter =>
                (parameter.JsonName, !parameter.IsRequired, (Action<Utf8JsonWriter>)parameter.WriteSchema)
            )
        );
        Schema.Members(schema, members);
        if (verb.IsAboutColumn)
        {
            schema.WriteStartArray("oneOf");
            foreach (var way in new[] { "document", "file" })
            {
                schema.WriteStartObject();
                schema.Texts("required", [way]);
                schema.WriteEndObject();
            }

            schema.WriteEndArray();
        }
    }

    private static void Replies(Utf8JsonWriter schema)
    {
        Begin(schema, "A line that ColumnTool answers", "verb");
        schema.WriteStartObject("properties");
        Id(schema, "id", ["number", "string", "null"]);
        schema.WriteStartObject("verb");
        schema.Texts("enum", [.. AllVerbs.Names, LineServer.Cancel]);
        schema.WriteEndObject();
        schema.WriteStartObject("answer");
        schema.WriteEndObject();
        schema.WritePropertyName("error");
        Schema.Type(schema, ["object"], "why there is no answer", Error);
        schema.WriteEndObject();
        schema.WriteBoolean("additionalProperties", false);
        schema.WriteStartArray("oneOf");
        foreach (var members in new[] { new[] { "id", "verb", "answer" }, ["id", "error"] })
        {
            schema.WriteStartObject();
            schema.Texts("required", members);
            schema.WriteEndObject();
        }

        schema.WriteEndArray();
        ForEachVerb(schema, [.. AllVerbs.Names, LineServer.Cancel], "answer");
        schema.WriteStartObject("$defs");
        foreach (var verb in AllVerbs.List)
        {
            schema.WritePropertyName(verb.Name);
            Schema.Type(
                schema,
                ["object"],
                verb.Summary,
                inside =>
                    Schema.Members(
                        inside,
                        [
                            .. Schema.Members(verb.Fields),
                            ("warnings", false, Warnings),
                            Provenances.Member(verb.IsAboutColumn),
                        ]
                    )
            );
        }

        schema.WritePropertyName(LineServer.Cancel);
        Schema.Type(
            schema,
            ["object"],
            null,
            inside =>
                Schema.Members(
                    inside,
                    [
                        (
                            "found",
                            false,
                            s =>
                                Schema.Type(
                                    s,
                                    ["boolean"],
                                    "whether there was such a question, not answered yet"
                                )
                        ),
                    ]
                )
        );
        schema.WriteEndObject();
    }

    private static void Error(Utf8JsonWriter schema) =>
        Schema.Members(
            schema,
            [
                (
                    "code",
                    false,
                    s =>
                        Schema.Type(
                            s,
                            ["string"],
                            "what a program compares",
                            more => more.Texts("enum", Problem.Codes)
                        )
                ),
                ("message", false, s => Schema.Type(s, ["string"], "a line for people")),
                (
                    "document",
                    false,
                    s => Schema.Type(s, ["string", "null"], "the name of the file that it is about, if any")
                ),
                (
                    "place",
                    false,
                    s =>
                        Schema.Type(
                            s,
                            ["string", "null"],
                            "the place in the document, or the member of the request"
                        )
                ),
            ]
        );

    private static void Begin(Utf8JsonWriter schema, string title, string discriminator)
    {
        schema.WriteString("$schema", Dialect);
        schema.WriteString("title", title);
        schema.WriteString("$comment", $"The other members depend on {discriminator}.");
        schema.WriteString("type", "object");
    }

    private static void Id(Utf8JsonWriter schema, string name, string[] types)
    {
        schema.WritePropertyName(name);
        Schema.Type(schema, types, "the id of the question, chosen by the asker, up to 200 bytes");
    }

    // Chosen by the verb, so that a slip in one is one error.
    private static void ForEachVerb(Utf8JsonWriter schema, string[] names, string? member = null)
    {
        schema.WriteStartArray("allOf");
        foreach (var name in names)
        {
            schema.WriteStartObject();
            schema.WriteStartObject("if");
            schema.WriteStartObject("properties");
            schema.WriteStartObject("verb");
            schema.WriteString("const", name);
            schema.WriteEndObject();
            schema.WriteEndObject();
            schema.Texts("required", ["verb"]);
            schema.WriteEndObject();
            schema.WriteStartObject("then");
            if (member is not null)
            {
                schema.WriteStartObject("properties");
                schema.WriteStartObject(member);
            }

            schema.WriteString("$ref", $"#/$defs/{name}");
            if (member is not null)
            {
                schema.WriteEndObject();
                schema.WriteEndObject();
            }

            schema.WriteEndObject();
            schema.WriteEndObject();
        }

        schema.WriteEndArray();
    }

    private static void Warnings(Utf8JsonWriter schema) =>
        Schema.Type(
            schema,
            ["array"],
            "cautions to read before relying on the answer",
            more =>
            {
                more.WritePropertyName("items");
                Schema.Type(more, ["string"], null);
            }
        );

    private static void Anything(Utf8JsonWriter schema) => schema.WriteBooleanValue(true);
}
