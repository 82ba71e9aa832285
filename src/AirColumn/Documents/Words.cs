namespace AirColumn.Documents;

/// <summary>The words that documents have for a few values.</summary>
internal sealed class Words<T>(params (string Word, T Value)[] pairs)
    where T : notnull
{
    private readonly string[] all = [.. pairs.Select(pair => pair.Word)];

    /// <summary>Reads one of the words.</summary>
    public T Read(DocumentValue value)
    {
        var word = value.Word(all);
        return pairs[Array.IndexOf(all, word)].Value;
    }

    /// <summary>The word for a value; null where there is none.</summary>
    public string? For(T value) =>
        pairs.FirstOrDefault(pair => EqualityComparer<T>.Default.Equals(pair.Value, value)).Word;
}
