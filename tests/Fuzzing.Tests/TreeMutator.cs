using System.Text.Json.Nodes;

namespace Fuzzing.Tests;

/// <summary>
/// Makes JSON that is nearly right: members left out, renamed, put elsewhere, values exchanged for others that stand in the examples
/// or lie at a limit. All of it is JSON, so that what lies behind the JSON reader is reached each time. The same seed gives the same.
/// </summary>
internal sealed class TreeMutator(int seed, IReadOnlyList<string> examples, IReadOnlyList<string> values)
{
    private const int Deepest = 20; // of a piece put into another

    private readonly Random random = new(seed);
    private readonly string[] keys =
    [
        .. examples
            .SelectMany(example => Nodes(JsonNode.Parse(example)!))
            .OfType<JsonObject>()
            .SelectMany(members => members.Select(member => member.Key))
            .Append("x-")
            .Distinct(),
    ];

    public string Next()
    {
        var root = (JsonObject)JsonNode.Parse(Pick(examples))!;
        for (var changes = 1 + random.Next(3); changes > 0; changes--)
        {
            Change(root);
        }

        return root.ToJsonString();
    }

    private void Change(JsonObject root)
    {
        var node = Pick(Nodes(root).ToList());
        switch (random.Next(5))
        {
            case 0 when node is JsonObject members:
                members[Pick(keys)] = Value(root);
                break;
            case 1 when node is JsonObject { Count: > 0 } members:
                var key = Pick(members.Select(member => member.Key).ToList());
                var value = members[key]?.DeepClone();
                members.Remove(key);
                if (random.Next(2) == 0)
                {
                    members[Pick(keys)] = value;
                }

                break;
            case 2 when node is JsonArray items:
                items.Insert(random.Next(items.Count + 1), Value(root));
                break;
            case 3 when node is JsonArray { Count: > 0 } items:
                items.RemoveAt(random.Next(items.Count));
                break;
            default:
                if (node != root)
                {
                    Replace(node, Value(root));
                }

                break;
        }
    }

    // One from the list, or a copy of another piece.
    private JsonNode? Value(JsonNode root)
    {
        if (random.Next(2) == 0)
        {
            return JsonNode.Parse(Pick(values));
        }

        var piece = Pick(Nodes(random.Next(2) == 0 ? root : JsonNode.Parse(Pick(examples))!).ToList());
        return Depth(piece) < Deepest ? piece.DeepClone() : null;
    }

    private static void Replace(JsonNode node, JsonNode? other)
    {
        if (node.Parent is JsonArray items)
        {
            items[node.GetElementIndex()] = other;
        }
        else
        {
            ((JsonObject)node.Parent!)[node.GetPropertyName()] = other;
        }
    }

    private static int Depth(JsonNode? node) =>
        1
        + (
            node switch
            {
                JsonObject members => members.Select(member => Depth(member.Value)),
                JsonArray items => items.Select(Depth),
                _ => [],
            }
        )
            .DefaultIfEmpty()
            .Max();

    private static IEnumerable<JsonNode> Nodes(JsonNode node) =>
        node switch
        {
            JsonObject members => members
                .Where(member => member.Value is not null)
                .SelectMany(member => Nodes(member.Value!))
                .Prepend(node),
            JsonArray items => items
                .Where(item => item is not null)
                .SelectMany(item => Nodes(item!))
                .Prepend(node),
            _ => [node],
        };

    private T Pick<T>(IReadOnlyList<T> from) => from[random.Next(from.Count)];
}
