namespace AirColumn.Documents;

/// <summary>Makes a domain value and turns its refusal into an error of the document.</summary>
internal static class Checked
{
    private const int Longest = 400; // of a message, which may hold the names of two holes

    /// <summary>Makes a value from members of an object.</summary>
    /// <param name="where">The object whose members are the arguments.</param>
    /// <param name="make">Calls the constructor.</param>
    /// <param name="paths">Where a parameter is whose name is not the key of a member.</param>
    /// <exception cref="ColumnDocumentException">An argument was refused.</exception>
    public static T Make<T>(
        DocumentObject where,
        Func<T> make,
        params (string Parameter, string Path)[] paths
    )
    {
        try
        {
            return make();
        }
        catch (ArgumentException problem)
        {
            var parameter = problem.ParamName ?? "";
            var path = paths.FirstOrDefault(pair => pair.Parameter == parameter).Path;
            path ??= where.Has(parameter) ? where.PathOf(parameter) : where.Path;
            throw new ColumnDocumentException(path, Message(problem, parameter, path), problem);
        }
    }

    // "length is 0 mm; …" becomes "sections[2].length is 0 mm; …".
    private static string Message(ArgumentException problem, string parameter, string path)
    {
        var message = problem.Message;
        var appended = message.IndexOf($" (Parameter '{parameter}')", StringComparison.Ordinal);
        message = appended < 0 ? message : message[..appended];
        message =
            parameter.Length > 0 && message.StartsWith($"{parameter} is ", StringComparison.Ordinal)
                ? $"{path}{message[parameter.Length..]}"
            : path.Length > 0 ? $"{path}: {message}"
            : message;
        return Quote.Cut(message, Longest);
    }
}
