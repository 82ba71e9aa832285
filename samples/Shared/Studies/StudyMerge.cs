using System.Security.Cryptography;
using AirColumn.Studies;

namespace Shared.Studies;

/// <summary>Puts the parts of a study together, if every item is there exactly once and all are of one study and one version.</summary>
internal sealed class StudyMerge
{
    private const int MostNamed = 5;

    private readonly List<(PartFolder Folder, PartStamp Stamp)> parts = [];

    /// <summary>Looks through folders.</summary>
    /// <exception cref="BadInputException">They are not of one study.</exception>
    /// <exception cref="FailureException">Items are missing, there twice, or of different versions.</exception>
    public StudyMerge(IReadOnlyList<string> folders)
    {
        var damaged = new List<string>();
        foreach (var path in folders)
        {
            var folder = PartFolder.Open(path);
            Study ??= folder.Study;
            if (folder.Study.Sha256() != Study.Sha256())
            {
                throw new BadInputException(
                    $"'{path}' is of another study than '{folders[0]}'; merge parts of one study."
                );
            }

            var (stamps, unread) = folder.Stamps();
            parts.AddRange(stamps.Select(stamp => (folder, stamp)));
            damaged.AddRange(unread);
        }

        if (damaged.Count > 0)
        {
            throw Refuse("parts are damaged", damaged);
        }

        parts.Sort((one, other) => one.Stamp.First.CompareTo(other.Stamp.First));
        RequireOneOrigin();
        RequireEveryItemOnce();
    }

    /// <summary>The study.</summary>
    public Study Study { get; } = null!;

    /// <summary>How many items could not be computed in full.</summary>
    public long Errors => parts.Sum(part => part.Stamp.Errors);

    /// <summary>How many parts there are.</summary>
    public int Parts => parts.Count;

    /// <summary>What computed them; several where machines differ.</summary>
    public IReadOnlyList<ComputedBy> By => [.. parts.Select(part => part.Stamp.By).Distinct()];

    /// <summary>Writes all rows.</summary>
    /// <exception cref="FailureException">A part is damaged.</exception>
    public void Write(Stream stream, RowFormat format)
    {
        try
        {
            format.Write(stream, Study, parts.SelectMany(part => part.Folder.Rows(part.Stamp)));
        }
        catch (DamagedException problem)
        {
            throw Refuse("parts are damaged", [problem.Message]);
        }
    }

    /// <summary>What is kept beside the file: the study, what the numbers are, and what computed them.</summary>
    public string Manifest(string name, Stream file) =>
        JsonText.Of(json =>
        {
            json.WriteNumber("manifest", 1);
            json.WriteString("file", name);
            json.WriteString("sha256", Convert.ToHexStringLower(SHA256.HashData(file)));
            json.WriteNumber("items", Study.Count);
            json.WriteNumber("errors", Errors);
            json.WriteNumber("parts", Parts);
            json.WriteString("studySha256", Study.Sha256());
            json.WriteStartArray("computedBy");
            foreach (var by in By)
            {
                json.WriteStartObject();
                by.Write(json);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("fields");
            foreach (var field in Study.Fields)
            {
                json.WriteStartObject();
                json.WriteString("name", field.Name);
                json.WriteString("unit", field.Unit);
                json.WriteString("meaning", field.Meaning);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WritePropertyName("study");
            json.WriteRawValue(Study.ToUtf8());
        });

    private void RequireOneOrigin()
    {
        foreach (var (folder, stamp) in parts)
        {
            if (stamp.StudySha256 != Study.Sha256())
            {
                throw new FailureException(
                    $"{stamp.File} in '{folder.Path}' is of another study; take it out."
                );
            }

            if (stamp.By.Library != parts[0].Stamp.By.Library)
            {
                throw new FailureException(
                    $"{stamp.File} was computed by version {stamp.By.Library}, {parts[0].Stamp.File} by {parts[0].Stamp.By.Library}; compute all parts with one."
                );
            }
        }
    }

    private void RequireEveryItemOnce()
    {
        var next = 0L;
        var missing = new List<string>();
        foreach (var (folder, stamp) in parts)
        {
            if (stamp.First < next)
            {
                throw new FailureException(
                    $"Item {stamp.First} is there twice: {stamp.File} in '{folder.Path}' has an item that another part has too. Take one of them out."
                );
            }

            Miss(stamp.First);
            next = stamp.First + stamp.Count;
        }

        if (next > Study.Count)
        {
            throw new FailureException($"There are items up to {next - 1}; the study has {Study.Count}.");
        }

        Miss(Study.Count);
        if (missing.Count > 0)
        {
            throw Refuse("items are missing", missing);
        }

        void Miss(long until)
        {
            if (until > next)
            {
                missing.Add(until == next + 1 ? $"{next}" : $"{next} to {until - 1}");
            }
        }
    }

    private static FailureException Refuse(string what, List<string> which) =>
        new(
            $"Nothing was merged, since {what}: {string.Join("; ", which.Take(MostNamed))}"
                + (which.Count > MostNamed ? $" and {which.Count - MostNamed} more" : "")
                + ". Run study with --resume for the shares that have them, then merge again."
        );
}
