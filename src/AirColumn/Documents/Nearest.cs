namespace AirColumn.Documents;

/// <summary>Finds the known word that a misspelt one was meant to be.</summary>
internal static class Nearest
{
    /// <summary>The known word that takes the fewest changes of letters; the first of several.</summary>
    public static string To(string word, IEnumerable<string> known)
    {
        // No known word is near to one of more letters than that.
        var beginning = word.Length <= 40 ? word : word[..40];
        return known.MinBy(candidate => Changes(beginning, candidate))!;
    }

    /// <summary>The same where it takes a third of the letters or fewer; null where the word is another one altogether.</summary>
    public static string? IfNear(string word, IEnumerable<string> known)
    {
        var candidates = known.ToList();
        return
            candidates.Count > 0
            && To(word, candidates) is var nearest
            && Changes(word, nearest) <= Math.Max(1, nearest.Length / 3)
            ? nearest
            : null;
    }

    // Levenshtein's distance, upper and lower case alike.
    private static int Changes(string from, string to)
    {
        var row = Enumerable.Range(0, to.Length + 1).ToArray();
        for (var i = 1; i <= from.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                var same = char.ToUpperInvariant(from[i - 1]) == char.ToUpperInvariant(to[j - 1]);
                var changes = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (same ? 0 : 1));
                (diagonal, row[j]) = (row[j], changes);
            }
        }

        return row[^1];
    }
}
