namespace WebService;

/// <summary>Limits of what one request may ask for.</summary>
internal static class Limit
{
    /// <summary>Refuses a number out of range.</summary>
    public static void Require(int value, int least, int most, string parameter)
    {
        if (value < least || value > most)
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                $"{parameter} is {value}; allowed is {least} to {most}."
            );
        }
    }
}
