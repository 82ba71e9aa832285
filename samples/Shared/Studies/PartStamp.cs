using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Text.Json;
using AirColumn.Documents;

namespace Shared.Studies;

/// <summary>What is kept beside a part: which items it has, of which study, computed by what, and the hash of its file.</summary>
internal sealed record PartStamp(
    string File,
    long First,
    long Count,
    long Errors,
    string Sha256,
    string? ParquetSha256,
    string StudySha256,
    ComputedBy By
)
{
    private const int Version = 1;

    /// <summary>The name of a part's file.</summary>
    public static string NameOf(long first, long count) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"part-{first:D12}-{first + count - 1:D12}{RowFormat.Csv.Extension}"
        );

    /// <summary>The same as Parquet, where that was asked for.</summary>
    public string ParquetFile => Path.ChangeExtension(File, RowFormat.Parquet.Extension);

    /// <summary>Its text.</summary>
    public string ToJson() =>
        JsonText.Of(json =>
        {
            json.WriteNumber("part", Version);
            json.WriteString("file", File);
            json.WriteNumber("first", First);
            json.WriteNumber("count", Count);
            json.WriteNumber("errors", Errors);
            json.WriteString("sha256", Sha256);
            json.WriteString("parquetSha256", ParquetSha256);
            json.WriteString("studySha256", StudySha256);
            By.Write(json);
        });

    /// <summary>Reads it.</summary>
    /// <exception cref="DamagedException">It is none.</exception>
    public static PartStamp Read(byte[] utf8)
    {
        try
        {
            using var json = JsonDocument.Parse(utf8);
            var part = json.RootElement;
            if (part.GetProperty("part").GetInt32() != Version)
            {
                throw new DamagedException("it is of another version");
            }

            return new PartStamp(
                part.GetProperty("file").GetString() ?? "",
                part.GetProperty("first").GetInt64(),
                part.GetProperty("count").GetInt64(),
                part.GetProperty("errors").GetInt64(),
                part.GetProperty("sha256").GetString() ?? "",
                part.GetProperty("parquetSha256").GetString(),
                part.GetProperty("studySha256").GetString() ?? "",
                ComputedBy.Read(part)
            );
        }
        catch (Exception problem)
            when (problem
                    is JsonException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or FormatException
            )
        {
            throw new DamagedException($"it is not what was written ({OneLine.Of(problem)})");
        }
    }
}

/// <summary>What computed rows: the library, and what last digits may depend on.</summary>
internal sealed record ComputedBy(
    string LibraryVersion,
    string? Commit,
    string Runtime,
    string System,
    int VectorBits
)
{
    /// <summary>This process.</summary>
    public static ComputedBy Here { get; } =
        new(
            Provenance.LibraryVersion,
            Provenance.Commit,
            RuntimeInformation.FrameworkDescription,
            RuntimeInformation.RuntimeIdentifier,
            64 * Vector<double>.Count
        );

    /// <summary>The library alone, for people.</summary>
    public string Library => Commit is null ? LibraryVersion : $"{LibraryVersion}+{Commit}";

    /// <summary>Writes it.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteString("libraryVersion", LibraryVersion);
        json.WriteString("commit", Commit);
        json.WriteString("runtime", Runtime);
        json.WriteString("system", System);
        json.WriteNumber("vectorBits", VectorBits);
    }

    /// <summary>Reads it.</summary>
    public static ComputedBy Read(JsonElement json) =>
        new(
            json.GetProperty("libraryVersion").GetString() ?? "",
            json.GetProperty("commit").GetString(),
            json.GetProperty("runtime").GetString() ?? "",
            json.GetProperty("system").GetString() ?? "",
            json.GetProperty("vectorBits").GetInt32()
        );
}
