using System.Globalization;
using AirColumn;
using AirColumn.Studies;

namespace Shared.Studies;

/// <summary>Which part of a study a process computes: one of so many shares, in whole parts.</summary>
internal readonly record struct Shard(int Number, int Of)
{
    /// <summary>All of it.</summary>
    public static Shard Whole { get; } = new(1, 1);

    /// <summary>Reads one such as "3/8".</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static Shard Parse(string text)
    {
        var halves = text.Split('/');
        return
            halves.Length == 2
            && int.TryParse(halves[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && int.TryParse(halves[1], NumberStyles.None, CultureInfo.InvariantCulture, out var of)
            && number >= 1
            && number <= of
            && of <= 1_000_000
            ? new Shard(number, of)
            : throw new FormatException(
                $"'{text}' is not a share; write its number and how many there are, such as 3/8. The first is 1; at most 1000000 are allowed."
            );
    }

    /// <summary>The first of so many parts, and the one behind the last.</summary>
    public (long First, long End) PartsOf(long parts) =>
        ((long)((Int128)parts * (Number - 1) / Of), (long)((Int128)parts * Number / Of));

    /// <summary>As it is written.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Number}/{Of}");
}

/// <summary>Computes a share of a study into a folder, part by part.</summary>
internal sealed class StudyRun(PartFolder folder, Shard shard, int partSize, bool withParquet = false)
{
    private readonly Study study = folder.Study;
    private readonly (long First, long End) parts = shard.PartsOf(PartCount(folder.Study, partSize));

    /// <summary>How many items each part has, where nothing else is said.</summary>
    public const int UsualPartSize = 1000;

    /// <summary>How many items the share has.</summary>
    public long Items => FirstOf(parts.End) - FirstOf(parts.First);

    /// <summary>How many of them are there already.</summary>
    public long Kept { get; private set; }

    /// <summary>How many items of parts that are there could not be computed in full.</summary>
    public long Errors { get; private set; }

    /// <summary>How many parts a study has.</summary>
    public static long PartCount(Study study, int partSize) => (study.Count + partSize - 1) / partSize;

    /// <summary>Which parts are to be computed still.</summary>
    /// <param name="resumes">Whether there may be some already.</param>
    /// <param name="isAlone">Whether no other process computes parts of this share.</param>
    /// <returns>Their numbers, and what was wrong with those that were there.</returns>
    /// <exception cref="BadInputException">What is there does not fit.</exception>
    public (List<long> ToDo, List<string> Damaged) Left(bool resumes, bool isAlone = true)
    {
        var (stamps, damaged) = folder.Stamps();
        var (begin, end) = (FirstOf(parts.First), FirstOf(parts.End));
        var own = stamps.Where(stamp => stamp.First < end && stamp.First + stamp.Count > begin).ToList();
        if (own.Count > 0 && !resumes)
        {
            throw new BadInputException(
                $"'{folder.Path}' has parts of this share already, such as {own[0].File}; go on with --resume, or name another folder."
            );
        }

        var whole = new HashSet<long>();
        foreach (var stamp in own)
        {
            var part = stamp.First / partSize;
            if (
                stamp.First != FirstOf(part)
                || stamp.Count != FirstOf(part + 1) - stamp.First
                || stamp.ParquetSha256 is not null != withParquet
            )
            {
                throw new BadInputException(
                    $"'{folder.Path}' has {stamp.File}, which is not a part of {partSize} items {(withParquet ? "with" : "without")} Parquet; go on with the same --part and --parquet, or name another folder."
                );
            }

            if (stamp.By.Library != ComputedBy.Here.Library)
            {
                throw new BadInputException(
                    $"{stamp.File} was computed by version {stamp.By.Library}, this is {ComputedBy.Here.Library}; go on with that, or begin in another folder."
                );
            }

            if (folder.WhatIsWrong(stamp) is { } wrong)
            {
                damaged.Add(wrong);
                continue;
            }

            whole.Add(part);
            Kept += stamp.Count;
            Errors += stamp.Errors;
        }

        if (isAlone)
        {
            folder.RemoveDrafts(begin, end);
        }

        List<long> toDo = [];
        for (var part = parts.First; part < parts.End; part++)
        {
            if (!whole.Contains(part))
            {
                toDo.Add(part);
            }
        }

        return (toDo, damaged);
    }

    /// <summary>Computes parts, each written as soon as all of it is there.</summary>
    /// <param name="toDo">Their numbers.</param>
    /// <param name="jobs">How many items at once.</param>
    /// <param name="did">Is told of each item.</param>
    /// <param name="token">Ends it early; the part in hand is lost, and nothing else.</param>
    /// <exception cref="FailureException">A part cannot be written.</exception>
    public void Compute(IReadOnlyList<long> toDo, int jobs, Action<StudyRow> did, CancellationToken token)
    {
        var answers = Batch.Map(
            toDo.SelectMany(ItemsOf),
            study.Answer,
            new BatchOptions { DegreeOfParallelism = jobs, InOrder = true },
            cancellationToken: token
        );
        var rows = new List<StudyRow>(partSize);
        foreach (var answer in answers)
        {
            rows.Add(answer.Answer);
            did(answer.Answer);
            var next = answer.Question + 1;
            if (next % partSize == 0 || next == study.Count)
            {
                var stamp = folder.Write(rows, withParquet);
                Kept += stamp.Count;
                Errors += stamp.Errors;
                rows.Clear();
            }
        }
    }

    /// <summary>The items of a part.</summary>
    public IEnumerable<long> ItemsOf(long part)
    {
        for (var item = FirstOf(part); item < FirstOf(part + 1); item++)
        {
            yield return item;
        }
    }

    private long FirstOf(long part) => Math.Min(part * partSize, study.Count);
}
