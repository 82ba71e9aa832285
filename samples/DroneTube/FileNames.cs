using AirColumn.Pitches;

namespace DroneTube;

/// <summary>What files are called that nobody named.</summary>
internal static class FileNames
{
    /// <summary>Beside a parts file, with the note, so that the files of one tube on two notes are two.</summary>
    public static string Beside(string parts, string ending) =>
        Path.Combine(
            Path.GetDirectoryName(parts) ?? "",
            $"{Path.GetFileNameWithoutExtension(parts)}-{ending}"
        );

    /// <summary>A note as part of a name: no sign of it means something else in an address or a shell.</summary>
    public static string Of(Pitch note) =>
        note.ToString()
            .Replace("#", "sharp", StringComparison.Ordinal)
            .Replace("b", "flat", StringComparison.Ordinal);
}
