namespace AirColumn.Documents;

/// <summary>Finds the known word that a misspelt one was meant to be.</summary>
internal static class Nearest
{
    // No known word is near to one of more letters than that.
    private const int Longest = 40;

    /// <summary>The known word that takes the fewest changes of letters; the first of several.</summary>
    public static string To(string word, IEnumerable<string> known) =>
        known.MinBy(candidate => Changes(Cut(word), candidate))!;

    /// <summary>The same, or null where more than a third of its letters would have to change.</summary>
    public static string? IfNear(string word, IEnumerable<string> known)
    {
        var nearest = known.MinBy(candidate => Changes(Cut(word), candidate));
        return nearest is not null && Changes(Cut(word), nearest) <= Math.Max(1, nearest.Length / 3)
            ? nearest
            : null;
    }

    private static string Cut(string word) => word.Length <= Longest ? word : word[..Longest];

    // Letters put in, left out, replaced, or changed with their neighbour (optimal string alignment); upper and lower case alike.
    private static int Changes(string from, string to)
    {
        var changes = new int[from.Length + 1, to.Length + 1];
        for (var i = 0; i <= from.Length; i++)
        {
            for (var j = 0; j <= to.Length; j++)
            {
                changes[i, j] =
                    i == 0 || j == 0
                        ? i + j
                        : Math.Min(
                            Math.Min(changes[i - 1, j], changes[i, j - 1]) + 1,
                            changes[i - 1, j - 1] + (IsSame(from[i - 1], to[j - 1]) ? 0 : 1)
                        );
                if (i > 1 && j > 1 && IsSame(from[i - 1], to[j - 2]) && IsSame(from[i - 2], to[j - 1]))
                {
                    changes[i, j] = Math.Min(changes[i, j], changes[i - 2, j - 2] + 1);
                }
            }
        }

        return changes[from.Length, to.Length];
    }

    private static bool IsSame(char a, char b) => char.ToUpperInvariant(a) == char.ToUpperInvariant(b);
}
