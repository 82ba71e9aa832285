using AirColumn.Bores;

namespace AirColumn.Documents;

/// <summary>The laws of horns as documents name them.</summary>
internal static class HornWords
{
    /// <summary>All of them.</summary>
    public static string[] All => ["exponential", "catenoidal", "parabolic", "bessel", "cosine"];

    /// <summary>The law of one of these words.</summary>
    public static HornLaw Law(string word) => (HornLaw)Array.IndexOf(All, word);

    /// <summary>The word of a law.</summary>
    public static string Of(HornLaw law) => All[(int)law];
}
