using System.Runtime.CompilerServices;

namespace AirColumn.Documents;

/// <summary>The names that a document can hold.</summary>
internal static class NameText
{
    private const int Longest = 1000;

    /// <summary>Refuses a name that is too long or could not be written.</summary>
    public static void RequireWritable(
        string? name,
        [CallerArgumentExpression(nameof(name))] string parameter = ""
    )
    {
        if (name is null)
        {
            return;
        }

        if (name.Length > Longest)
        {
            throw new ArgumentException(
                $"The name has {Require.Show(name.Length, "")} characters; at most {Longest} are allowed.",
                parameter
            );
        }

        for (var i = 0; i < name.Length; i++)
        {
            if (char.IsSurrogatePair(name, i))
            {
                i++;
            }
            else if (char.IsSurrogate(name[i]))
            {
                throw new ArgumentException(
                    "The name holds only half of a surrogate pair; write both halves.",
                    parameter
                );
            }
        }
    }
}
