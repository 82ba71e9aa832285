using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using AirColumn.Documents;
using AirColumn.Studies;

namespace Shared.Studies;

/// <summary>
/// A folder with the parts of a study. A part is there once its stamp is: file and stamp are written under other names, put on the disk and
/// given theirs, in this order, so that a machine that dies leaves a whole part or none.
/// </summary>
internal sealed partial class PartFolder
{
    private const string StudyName = "study.json";
    private const string StampExtension = ".json";

    private int largest;

    private PartFolder(string path, Study study) => (Path, Study) = (path, study);

    /// <summary>The folder.</summary>
    public string Path { get; }

    /// <summary>The study whose parts it has.</summary>
    public Study Study { get; }

    /// <summary>Makes the folder, or takes one that is there; the study is kept in it.</summary>
    /// <exception cref="BadInputException">It has the parts of another study.</exception>
    /// <exception cref="FailureException">Nothing can be written there.</exception>
    public static PartFolder Begin(string path, Study study)
    {
        try
        {
            Directory.CreateDirectory(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new FailureException($"The folder '{path}' cannot be made: {problem.Message}");
        }

        var folder = new PartFolder(path, study);
        var kept = System.IO.Path.Combine(path, StudyName);
        if (!File.Exists(kept))
        {
            folder.Keep(StudyName, stream => stream.Write(study.ToUtf8()));
        }

        var sha = Open(path).Study.Sha256();
        return sha == study.Sha256()
            ? folder
            : throw new BadInputException(
                $"'{path}' has the parts of another study (SHA-256 {sha[..12]}…, this one has {study.Sha256()[..12]}…); name another folder."
            );
    }

    /// <summary>Opens a folder that a study was written into.</summary>
    /// <exception cref="BadInputException">There is none, or it has no study.</exception>
    public static PartFolder Open(string path)
    {
        var kept = System.IO.Path.Combine(path, StudyName);
        if (!File.Exists(kept))
        {
            throw new BadInputException(
                $"'{path}' has no {StudyName}; name a folder that study --out has written into."
            );
        }

        try
        {
            return new PartFolder(path, InputFile.Read(kept, Read));
        }
        catch (ColumnDocumentException problem)
        {
            throw new BadInputException($"'{kept}' is damaged: {OneLine.Of(problem)}");
        }

        static Study Read(Stream stream)
        {
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return Study.Parse(bytes.ToArray());
        }
    }

    /// <summary>The stamps that are there, by items, and what is wrong with those that cannot be read.</summary>
    public (List<PartStamp> Stamps, List<string> Damaged) Stamps()
    {
        var stamps = new List<PartStamp>();
        var damaged = new List<string>();
        foreach (var path in Directory.EnumerateFiles(Path, $"part-*{StampExtension}"))
        {
            var name = System.IO.Path.GetFileName(path);
            if (!StampName().IsMatch(name))
            {
                continue;
            }

            try
            {
                var stamp = PartStamp.Read(File.ReadAllBytes(path));
                if (
                    name != stamp.File + StampExtension
                    || stamp.Count < 1
                    || stamp.File != PartStamp.NameOf(stamp.First, stamp.Count)
                )
                {
                    throw new DamagedException("it is about another file");
                }

                // What is the same in all of them is kept once.
                stamps.Add(
                    stamps is [var before, ..]
                    && before.By == stamp.By
                    && before.StudySha256 == stamp.StudySha256
                        ? stamp with
                        {
                            By = before.By,
                            StudySha256 = before.StudySha256,
                        }
                        : stamp
                );
            }
            catch (Exception problem) when (problem is DamagedException or IOException)
            {
                damaged.Add($"{name}: {problem.Message}");
            }
        }

        stamps.Sort((one, other) => (one.First, one.Count).CompareTo((other.First, other.Count)));
        return (stamps, damaged);
    }

    /// <summary>What is wrong with the files of a part; null if they are as they were written.</summary>
    public string? WhatIsWrong(PartStamp stamp) =>
        WhatIsWrong(stamp.File, stamp.Sha256)
        ?? (stamp.ParquetSha256 is { } sha ? WhatIsWrong(stamp.ParquetFile, sha) : null);

    /// <summary>The rows of a part, checked as they are read.</summary>
    /// <exception cref="DamagedException">They are not what its stamp says.</exception>
    public IEnumerable<StudyRow> Rows(PartStamp stamp)
    {
        if (WhatIsWrong(stamp) is { } wrong)
        {
            throw new DamagedException(wrong);
        }

        using var file = File.OpenRead(System.IO.Path.Combine(Path, stamp.File));
        var next = stamp.First;
        foreach (var row in CsvRows.Read(file, Study))
        {
            if (row.Item != next++)
            {
                throw new DamagedException($"{stamp.File} has item {row.Item} where {next - 1} should be");
            }

            yield return row;
        }

        if (next != stamp.First + stamp.Count)
        {
            throw new DamagedException($"{stamp.File} has {next - stamp.First} rows of {stamp.Count}");
        }
    }

    /// <summary>Writes a part: the same rows leave the same files, however often.</summary>
    /// <exception cref="FailureException">It cannot be written; nothing is left behind.</exception>
    public PartStamp Write(IReadOnlyList<StudyRow> rows, bool withParquet)
    {
        var name = PartStamp.NameOf(rows[0].Item, rows.Count);
        var parquetSha = withParquet
            ? Keep(System.IO.Path.ChangeExtension(name, RowFormat.Parquet.Extension), RowFormat.Parquet, rows)
            : null;
        var stamp = new PartStamp(
            name,
            rows[0].Item,
            rows.Count,
            rows.Count(row => row.Error.Length > 0),
            Keep(name, RowFormat.Csv, rows),
            parquetSha,
            Study.Sha256(),
            ComputedBy.Here
        );
        Keep(name + StampExtension, stream => stream.Write(Encoding.UTF8.GetBytes(stamp.ToJson())));
        return stamp;
    }

    /// <summary>Removes what a machine that died has left behind of parts between two items.</summary>
    public void RemoveDrafts(long first, long end)
    {
        foreach (var path in Directory.EnumerateFiles(Path, "part-*"))
        {
            var match = DraftName().Match(System.IO.Path.GetFileName(path));
            if (
                match.Success
                && long.Parse(match.Groups["first"].Value, null) is var from
                && from >= first
                && from < end
            )
            {
                File.Delete(path);
            }
        }
    }

    private string? WhatIsWrong(string name, string sha)
    {
        try
        {
            using var file = File.OpenRead(System.IO.Path.Combine(Path, name));
            return Convert.ToHexStringLower(SHA256.HashData(file)) == sha
                ? null
                : $"{name} is damaged: its SHA-256 differs from the one in its stamp";
        }
        catch (FileNotFoundException)
        {
            return $"{name} is missing";
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return $"{name} cannot be read: {problem.Message}";
        }
    }

    // The hash of what was to be written, not of what the disk gives back.
    private string Keep(string name, RowFormat format, IReadOnlyList<StudyRow> rows)
    {
        // A part takes about as much as the one before.
        using var bytes = new MemoryStream(largest);
        format.Write(bytes, Study, rows);
        largest = Math.Max(largest, (int)bytes.Length);
        var content = bytes.GetBuffer().AsMemory(0, (int)bytes.Length);
        Keep(name, stream => stream.Write(content.Span));
        return Convert.ToHexStringLower(SHA256.HashData(content.Span));
    }

    private void Keep(string name, Action<Stream> write)
    {
        using var file = DraftFile.Begin(System.IO.Path.Combine(Path, name), write);
        file.Keep(true);
    }

    [GeneratedRegex(@"^part-[0-9]{12,19}-[0-9]{12,19}\.csv\.json$", RegexOptions.CultureInvariant)]
    private static partial Regex StampName();

    [GeneratedRegex(
        @"^part-(?<first>[0-9]{12,18})-[0-9]{12,18}\.(csv|parquet)(\.json)?\.[a-z0-9]{8}\.[a-z0-9]{3}$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex DraftName();
}
