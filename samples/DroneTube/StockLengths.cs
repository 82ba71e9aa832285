using AirColumn.Documents;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>In which lengths the kinds of pipe are sold.</summary>
internal sealed class StockLengths
{
    private readonly Dictionary<string, Length> lengths = new(StringComparer.OrdinalIgnoreCase);
    private Length? others;

    /// <summary>Reads "10 ft, pvc-40 2 = 2 m".</summary>
    /// <exception cref="FormatException">It is not such a text.</exception>
    public static StockLengths Parse(string text)
    {
        var read = new StockLengths();
        foreach (var item in text.Split(','))
        {
            if (item.Split('=') is [var kind, var size])
            {
                read.lengths[kind.Trim()] = QuantityText.ParseLength(size.Trim());
            }
            else
            {
                read.others = read.others is null
                    ? QuantityText.ParseLength(item.Trim())
                    : throw new FormatException(
                        $"'{text}' has two lengths without the name of a pipe; write, for example, \"10 ft, pvc-40 2 = 2 m\"."
                    );
            }
        }

        return read;
    }

    /// <summary>Refuses a name that none of the pipes has.</summary>
    public void RequireKnown(IReadOnlyList<string> kinds)
    {
        if (
            lengths.Keys.FirstOrDefault(name => !kinds.Contains(name, StringComparer.OrdinalIgnoreCase)) is
            { } stray
        )
        {
            throw new BadInputException(
                $"--stock names '{stray}', which is not a pipe here; the pipes are {string.Join(", ", kinds)}."
            );
        }
    }

    /// <summary>The length in which a kind of pipe is sold.</summary>
    public Length Of(string kind) =>
        lengths.TryGetValue(kind, out var length)
            ? length
            : others
                ?? throw new BadInputException(
                    $"--stock gives no length for {kind}; add e.g. \"{kind} = 3 m\"."
                );
}
