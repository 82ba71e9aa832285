using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Shared.Studies;

namespace Studies.Tests;

public class ShardTests
{
    private const int Count = 137;

    private static readonly string Text = Workplace.Text(Count);
    private static readonly Lazy<byte[]> Csv = new(() => Workplace.Expected(Text));

    // However a study is shared out, in whatever order, by however many threads: the same bytes.
    [Property(MaxTest = 10)]
    public Property Any_shares_in_any_order_make_the_same_file() =>
        Prop.ForAll(
            Gen.Choose(1, 9).ToArbitrary(),
            Gen.Choose(1, 200).ToArbitrary(),
            Gen.Choose(0, int.MaxValue).ToArbitrary(),
            (shares, part, seed) =>
            {
                using var place = new Workplace();
                var study = place.Study("study.json", Count);
                var random = new Random(seed);
                var order = Enumerable.Range(1, shares).ToArray();
                random.Shuffle(order);
                foreach (var share in order)
                {
                    string[] more = random.Next(2) == 0 ? [] : ["--parquet"];
                    Workplace.Ran([
                        "study",
                        study,
                        "--shard",
                        $"{share}/{shares}",
                        "--out",
                        place["parts"],
                        "--part",
                        $"{part}",
                        "--jobs",
                        $"{random.Next(1, 4)}",
                        .. more,
                    ]);
                }

                Assert.Equal(Csv.Value, place.Merged("parts"));
            }
        );

    [Fact]
    public void Some_items_cannot_be_computed_and_say_so()
    {
        var lines = System.Text.Encoding.UTF8.GetString(Csv.Value).Split('\n');
        Assert.Equal(
            "item,length_of_section_1_m,diameter_of_section_1_m,f1_hz,f2_hz,f3_hz,q1,q2,q3,wavefronts,warnings,error",
            lines[0]
        );
        Assert.Equal(Count + 2, lines.Length);
        // A normal distribution 2.5 standard deviations from 0: of 137 lengths one or some are below it.
        Assert.Contains(
            lines,
            line => line.EndsWith("allowed is 0.001 mm to 1000000 mm.", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Folders_of_several_machines_are_merged()
    {
        using var place = new Workplace();
        var study = place.Study("study.json", Count);
        for (var share = 1; share <= 3; share++)
        {
            Workplace.Ran(
                "study",
                study,
                "--shard",
                $"{share}/3",
                "--out",
                place[$"{share}"],
                "--part",
                "10"
            );
        }

        var output = Workplace.Ran(
            "merge",
            place["3"],
            place["1"],
            place["2"],
            "--out",
            place["all.parquet"]
        );
        Assert.Contains($"{Count} items of 14 parts are in ", output, StringComparison.Ordinal);
        Assert.Equal(Workplace.Expected(Text, RowFormat.Parquet), File.ReadAllBytes(place["all.parquet"]));
    }

    [Theory]
    [InlineData("0/3")]
    [InlineData("4/3")]
    [InlineData("1")]
    [InlineData("a/b")]
    public void Shares_that_are_none_are_refused(string shard)
    {
        using var place = new Workplace();
        var (code, _, error) = Workplace.Run(
            "study",
            place.Study("study.json", 3),
            "--out",
            place["parts"],
            "--shard",
            shard
        );
        Assert.Equal(2, code);
        Assert.StartsWith(
            $"error: --shard: '{shard}' is not a share; write its number and how many there are, such as 3/8.",
            error,
            StringComparison.Ordinal
        );
        Assert.False(Directory.Exists(place["parts"]));
    }

    // Whole parts, all of them, none twice.
    [Property]
    public void Shares_cover_all_parts_once(FsCheck.PositiveInt parts, FsCheck.PositiveInt of)
    {
        var next = 0L;
        for (var i = 1; i <= of.Get; i++)
        {
            var (first, end) = new Shard(i, of.Get).PartsOf(parts.Get);
            Assert.Equal(next, first);
            next = end;
        }

        Assert.Equal(parts.Get, next);
    }
}
