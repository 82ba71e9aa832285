using System.Reflection;
using System.Text.Json.Nodes;

namespace Studies.Tests;

/// <summary>What goes wrong is said with what to do, loses nothing, and is gone on with.</summary>
public class TroubleTests
{
    private static readonly string Tool = typeof(TroubleTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(data => data.Key == "ColumnTool")
        .Value!;

    private const string Third = "part-000000000020-000000000029.csv";

    [Fact]
    public void A_damaged_part_is_said_and_computed_again()
    {
        using var place = Computed();
        var expected = place.Merged("parts");
        var path = place[$"parts/{Third}"];
        var bytes = File.ReadAllBytes(path);
        bytes[^5] ^= 1;
        File.WriteAllBytes(path, bytes);
        var (code, _, error) = Merge(place);
        Assert.Equal(1, code);
        Assert.Equal(
            $"error: Nothing was merged, since parts are damaged: {Third} is damaged: its SHA-256 differs from the one in its stamp. Run study with --resume for the shares that have them, then merge again.\n",
            error
        );
        Assert.Equal(expected, File.ReadAllBytes(place["merged.csv"]));
        Assert.Equal(
            $"warning: {Third} is damaged: its SHA-256 differs from the one in its stamp; it is computed again.\n",
            Resume(place).Error.Split("warning: 1 of")[0].Split("warning: 2 of")[0]
        );
        Assert.Equal(expected, place.Merged("parts"));
    }

    [Theory]
    [InlineData(Third, "items are missing: 20 to 29")]
    [InlineData("stamp", "parts are damaged")]
    public void What_is_missing_is_named(string what, string message)
    {
        using var place = Computed();
        var expected = place.Merged("parts");
        if (what == Third)
        {
            File.Delete(place[$"parts/{Third}"]);
            File.Delete(place[$"parts/{Third}.json"]);
        }
        else
        {
            File.WriteAllText(place[$"parts/{Third}.json"], "{ \"part\": 1,");
        }

        var (code, _, error) = Merge(place);
        Assert.Equal(1, code);
        Assert.Contains(message, error, StringComparison.Ordinal);
        Assert.Equal(0, Resume(place).Code);
        Assert.Equal(expected, place.Merged("parts"));
    }

    [Fact]
    public void Items_that_are_there_twice_are_refused()
    {
        using var place = Computed();
        Workplace.Ran("study", place["study.json"], "--out", place["other"], "--part", "40");
        var (code, _, error) = Workplace.Run(
            "merge",
            place["parts"],
            place["other"],
            "--out",
            place["merged.csv"]
        );
        Assert.Equal(1, code);
        Assert.StartsWith("error: Item ", error, StringComparison.Ordinal);
        Assert.Contains(" is there twice: ", error, StringComparison.Ordinal);
        Assert.False(File.Exists(place["merged.csv"]));
    }

    [Fact]
    public void Parts_of_another_study_or_version_are_refused()
    {
        using var place = Computed();
        var other = place.Study("other.json", 40, 2);
        var (code, _, error) = Workplace.Run("study", other, "--out", place["parts"], "--resume");
        Assert.Equal(2, code);
        Assert.Contains("has the parts of another study", error, StringComparison.Ordinal);

        Workplace.Ran("study", other, "--out", place["others"]);
        (code, _, error) = Workplace.Run("merge", place["parts"], place["others"], "--out", place["m.csv"]);
        Assert.Equal(2, code);
        Assert.Contains("is of another study than", error, StringComparison.Ordinal);

        var path = place[$"parts/{Third}.json"];
        var stamp = JsonNode.Parse(File.ReadAllText(path))!;
        stamp["commit"] = "0123";
        File.WriteAllText(path, stamp.ToJsonString());
        (code, _, error) = Merge(place);
        Assert.Equal(1, code);
        Assert.Contains("compute all parts with one.", error, StringComparison.Ordinal);
        (code, _, error) = Resume(place);
        Assert.Equal(2, code);
        Assert.Contains("go on with that, or begin in another folder.", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_that_are_there_are_not_touched_without_leave()
    {
        using var place = Computed();
        var (code, _, error) = Workplace.Run(
            "study",
            place["study.json"],
            "--out",
            place["parts"],
            "--part",
            "10"
        );
        Assert.Equal(2, code);
        Assert.Contains("go on with --resume, or name another folder.", error, StringComparison.Ordinal);
        (code, _, error) = Workplace.Run("study", place["study.json"], "--out", place["parts"], "--resume");
        Assert.Equal(2, code);
        Assert.Contains("go on with the same --part and --parquet", error, StringComparison.Ordinal);
        Assert.Contains(", 0 of them computed now.", Resume(place).Output, StringComparison.Ordinal);
    }

    // A file in its place, and a folder where not even root may write.
    [Fact]
    public void A_folder_that_cannot_be_written_is_said()
    {
        using var place = new Workplace();
        var study = place.Study("study.json", 40);
        var (code, _, error) = Workplace.Run("study", study, "--out", study);
        Assert.Equal(1, code);
        Assert.StartsWith($"error: The folder '{study}' cannot be made: ", error, StringComparison.Ordinal);
        if (Directory.Exists("/sys/kernel"))
        {
            (code, _, error) = Workplace.Run("study", study, "--out", "/sys/kernel");
            Assert.Equal(1, code);
            Assert.StartsWith(
                "error: '/sys/kernel/study.json' cannot be written: ",
                error,
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void A_document_that_is_none_is_said_before_anything_is_written()
    {
        using var place = new Workplace();
        File.WriteAllText(place["bad.json"], "{ \"study\": 1 }");
        var (code, _, error) = Workplace.Run("study", place["bad.json"], "--out", place["parts"]);
        Assert.Equal(4, code);
        Assert.EndsWith(
            "column is missing; write \"column\": { \"column\": 2, … }.\n",
            error,
            StringComparison.Ordinal
        );
        Assert.False(Directory.Exists(place["parts"]));
    }

    [TinyDiskFact]
    public void A_disk_that_is_full_loses_nothing()
    {
        using var place = new Workplace();
        var study = place.Study("study.json", 400);
        var parts = place["disk/parts"];
        Directory.CreateDirectory(place["disk"]);
        // Room for the study and two parts; then for all of them.
        var (code, output, error) = TinyDiskFactAttribute.Run(
            place["disk"],
            "48k",
            $$"""
            run() { dotnet exec "{{Tool}}" "$@"; }
            run study "{{study}}" --out "{{parts}}" --part 100 --resume; echo "$?"
            ls "{{parts}}" | wc -l
            mount -o remount,size=4M "{{place["disk"]}}"
            run study "{{study}}" --out "{{parts}}" --part 100 --resume && run merge "{{parts}}" --out "{{place[
                "merged.csv"
            ]}}"
            """
        );
        Assert.Equal(0, code);
        Assert.StartsWith("1\n5\n", output, StringComparison.Ordinal);
        Assert.StartsWith(
            $"error: '{parts}/part-000000000200-000000000299.csv' cannot be written: No space left on device",
            error,
            StringComparison.Ordinal
        );
        Assert.Contains(
            $"200 of 400 items are kept in '{parts}'; make room or give leave to write there, then go on with the same command and --resume.",
            error,
            StringComparison.Ordinal
        );
        Assert.Contains(", 200 of them computed now", output, StringComparison.Ordinal);
        Assert.Equal(Workplace.Expected(File.ReadAllText(study)), File.ReadAllBytes(place["merged.csv"]));
    }

    private static Workplace Computed()
    {
        var place = new Workplace();
        Workplace.Ran("study", place.Study("study.json", 40), "--out", place["parts"], "--part", "10");
        return place;
    }

    private static (int Code, string Output, string Error) Resume(Workplace place) =>
        Workplace.Run("study", place["study.json"], "--out", place["parts"], "--part", "10", "--resume");

    private static (int Code, string Output, string Error) Merge(Workplace place) =>
        Workplace.Run("merge", place["parts"], "--out", place["merged.csv"], "--force");
}
