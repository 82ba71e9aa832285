using AirColumn;

namespace BenchPage.Tubes;

/// <summary>The notes to choose from.</summary>
internal static class NoteNames
{
    private static readonly int Lowest = Pitch.Parse("A0").Number;

    public static IReadOnlyList<string> All { get; } =
    [
        .. Enumerable
            .Range(Lowest, Pitch.Parse("C6").Number - Lowest + 1)
            .Select(number => Pitch.FromNumber(number).ToString()),
    ];

    /// <summary>Where a note is among them, also one that is spelt otherwise.</summary>
    public static int IndexOf(string note) => Pitch.Parse(note).Number - Lowest;
}
