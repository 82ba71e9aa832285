using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Tubes;

/// <summary>What a plan promises of a tube, against the tube made anew with other sizes: bores put together by hand, resonances asked for again.</summary>
public partial class RemadeTubeTests
{
    // A budget is linear, and of one-dimensional waves: some hundredths of what a bell makes (docs of Uncertainty).
    private const double Linear = 0.04;

    // The tolerances are those that the documentation of TubeBuilder.Tolerances names; between limits any value is as likely as any other.
    [Draws(quick: 6, inLong: 60, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void Each_contribution_is_what_a_size_at_its_limits_makes(RandomTube tube)
    {
        var build = Plan(tube.Parts(), "D2");
        var cut = build.Exact!.Cut.Millimeters;
        double Half(Func<double, Frequency> first, double plusMinus) =>
            Math.Abs(Cents.Between(first(-plusMinus), first(plusMinus))) / 2 / Math.Sqrt(3);
        tube = tube with { Fronts = build.Exact.Column.Wavefronts };
        var like = tube with { Like = tube };
        var expected = new List<double>
        {
            Half(d => (like with { Inside = tube.Inside + d }).First(cut), tube.InsidePlusMinus),
            Half(d => tube.First(cut + d), 1),
            Half(
                d =>
                    tube.First(
                        cut,
                        Air.At(Temperature.FromDegreesCelsius(20 + d), RelativeHumidity.FromPercent(50))
                    ),
                3
            ),
        };
        if (tube.HasMouth)
        {
            expected.Add(Half(d => (tube with { MouthInside = tube.MouthInside + d }).First(cut), 0.2));
        }

        if (tube.HasEnd)
        {
            expected.Add(Half(d => tube.First(tube.Bore(cut, d)), 0.3));
            expected.Add(Half(d => (like with { EndInside = tube.EndInside + d }).First(cut), 0.3));
        }

        if (tube.HasBell)
        {
            expected.Add(Half(d => (like with { BellInside = tube.BellInside + d }).First(cut), 1));
        }

        var said = build.Budget!.Contributions.Select(part => part.StandardDeviationCents).Order().ToList();
        expected.Sort();
        Assert.Equal(expected.Count, said.Count);
        foreach (var (one, other) in expected.Zip(said))
        {
            Assert.Equal(one, other, Linear * one + 0.01);
        }

        var all = Math.Sqrt(expected.Sum(one => one * one));
        Assert.Equal(all, build.Budget.StandardDeviationCents, Linear * all);
        // With the player, whose distribution is normal.
        var player = build.Options.Correction.StandardDeviationCents;
        Assert.Equal(double.Hypot(all, player), build.Played!.StandardDeviationCents, Linear * all);
    }

    [Draws(quick: 6, inLong: 60, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void Each_what_if_is_the_tube_that_is_so(RandomTube tube)
    {
        var build = Plan(tube.Parts(), "D2");
        var cut = build.Exact!.Cut.Millimeters;
        var first = tube.First(cut);
        var said = WhatIf.Of(build, LengthUnits.Millimetres).ToList();
        void Says(string beginning, double expected, double within = 0.06)
        {
            var sentence = Assert.Single(said, s => s.StartsWith(beginning, StringComparison.Ordinal));
            Assert.Equal(expected, Changes(sentence)[0], within);
        }

        double By(Frequency other) => Cents.Between(first, other);
        Says(
            "In a room 5 °C",
            By(tube.First(cut, Air.At(Temperature.FromDegreesCelsius(25), RelativeHumidity.FromPercent(50))))
        );
        Says("Filled with warm breath", By(tube.First(cut, Breath(tube.Bore(cut).Length.Meters))));
        if (tube.HasMouth)
        {
            Says("A mouth end 2 mm wider", By((tube with { MouthInside = tube.MouthInside + 2 }).First(cut)));
        }

        Says("Pipe 2 mm wider", By((tube with { Like = tube, Inside = tube.Inside + 2 }).First(cut)));
        if (tube.HasBell)
        {
            var bore = tube.Bore(cut);
            var last = bore.Sections[^1];
            var straight = new Column(
                new Bore(
                    [.. bore.Sections.SkipLast(1), new CylinderSection(last.InletDiameter, last.Length)],
                    bore.FarEnd
                ),
                Room
            ).FirstResonances(2);
            var belled = new Column(bore, Room).FirstResonances(2);
            var changes = Changes(
                Assert.Single(said, s => s.StartsWith("Compared with", StringComparison.Ordinal))
            );
            foreach (var i in new[] { 0, 1 })
            {
                Assert.Equal(Cents.Between(straight[i].Frequency, belled[i].Frequency), changes[i], 0.06);
            }
        }

        // c/4f, and how much longer than the bore that is.
        var rule = 1000 * Room.SpeedOfSound.MetersPerSecond / 4 / build.Target.Hertz;
        var quarter = Assert.Single(
            said,
            s => s.StartsWith("The quarter-wave rule", StringComparison.Ordinal)
        );
        var numbers = Numbers().Matches(quarter).Select(match => Number(match.Groups[1].Value)).ToList();
        Assert.Equal(rule, numbers[0], 0.06);
        var off = rule - tube.Bore(cut).Length.Millimeters;
        Assert.Equal(Math.Abs(off), numbers[1], 0.06);
        Assert.Contains(off < 0 ? "too short" : "too long", quarter, StringComparison.Ordinal);
    }

    // What goes in and what is left are the socket together; nothing is left but where a gap was planned. So says the picture too.
    [Draws(quick: 4, inLong: 40, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void Pipes_are_pushed_in_as_far_as_planned(RandomTube tube)
    {
        if (!tube.HasEnd)
        {
            return;
        }

        var page = BuildSheet.Html(Plan(tube.Parts(), "D2"), "", LengthUnits.Millimetres);
        var steps = Push().Matches(Plain(page)).DistinctBy(step => step.Groups["pipe"].Value).ToList();
        Assert.Equal(["main pipe", "end pipe"], steps.Select(step => step.Groups["pipe"].Value));
        foreach (var (step, gap) in steps.Zip([tube.GapBefore, tube.GapAfter]))
        {
            Assert.Equal(tube.Depth - gap, Number(step.Groups["deep"].Value), 0.051);
            Assert.Equal(gap == 0, step.Groups["home"].Success);
            if (gap > 0)
            {
                Assert.Equal(gap, Number(step.Groups["left"].Value), 0.051);
            }
        }

        // In the picture the pipe, too, ends before the step in the fitting where a gap is left, and at it where none is.
        var joints = page.Split("<svg")
            .Where(svg => svg.Contains("and the reducer<", StringComparison.Ordinal))
            .ToList();
        Assert.Equal(2, joints.Count);
        foreach (var (joint, gap) in joints.Zip([tube.GapBefore, tube.GapAfter]))
        {
            var step = Across(joint, "part").Distinct().Order().ElementAt(1);
            Assert.Equal(gap > 0, Across(joint, "bore").Min(x => Math.Abs(x - step)) > 1);
        }

        // A gap is named in its picture as well, and nowhere else.
        var gaps = new[] { tube.GapBefore, tube.GapAfter }.Where(gap => gap > 0).ToList();
        Assert.Equal(gaps, Left().Matches(page).Select(match => Number(match.Groups[1].Value)).ToList());
    }

    // Every number of a row: the pipe cut so far, made anew.
    [Draws(quick: 3, inLong: 40, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void Each_row_of_the_trim_table_is_a_tube_cut_so_far(RandomTube tube)
    {
        var build = Plan(tube.Parts(), "D2");
        var player = build.Options.Correction;
        foreach (
            var (begin, table) in new[]
            {
                (build.FirstCut!, build.Trim()!),
                (build.FirstCutInches!, build.TrimInches()!),
            }
        )
        {
            var alike = tube with { Fronts = begin.Column.Wavefronts };
            foreach (var row in table.Rows.Where((_, i) => i % 5 == 0))
            {
                var cut = row.Length.Millimeters + tube.Hidden;
                Assert.Equal(begin.Cut.Millimeters, cut + row.Cut.Millimeters, 1e-6);
                var first = alike.First(cut);
                Assert.Equal(first.Hertz, row.Resonance.Hertz, 1e-5 * first.Hertz);
                Assert.Equal(Cents.Between(build.Target, first) + player.MeanCents, row.Cents, 0.02);
                Assert.Equal(first.Hertz * Math.Pow(2, player.MeanCents / 1200), row.Note.Hertz, 2e-3);
            }

            // The first is flat for all but one player in forty.
            Assert.InRange(table.Rows[0].Cents + table.Rows[0].PlusMinusCents, -3, 0);
            Assert.True(begin.Cut > build.Exact!.Cut);
        }
    }

    // Warm breath that has cooled to 1/e of the difference half way down, as a table of 400 places. Two airs are mixed: of their vapour, not of
    // their relative humidities. Saturated vapour by Magnus' formula (WMO-No. 8, annex 4.B), which is good to some parts in a thousand.
    private static AirProfile Breath(double length)
    {
        static double Saturated(double celsius) => 611.2 * Math.Exp(17.62 * celsius / (243.12 + celsius));
        const int Places = 400;
        return AirProfile.Tabulated([
            .. Enumerable
                .Range(0, Places + 1)
                .Select(i =>
                {
                    var left = Math.Exp(-2.0 * i / Places);
                    var celsius = 20 + left * (34 - 20);
                    var vapour = 0.5 * Saturated(20) + left * (Saturated(34) - 0.5 * Saturated(20));
                    return new AirProfilePoint(
                        Length.FromMeters(length * i / Places),
                        new AirState(
                            Temperature.FromDegreesCelsius(celsius),
                            RelativeHumidity.FromPercent(Math.Min(100, 100 * vapour / Saturated(celsius))),
                            carbonDioxide: Ratio.FromPercent(0.04 + left * (4 - 0.04))
                        )
                    );
                }),
        ]);
    }

    private static List<double> Changes(string sentence) =>
        [
            .. Change()
                .Matches(sentence)
                .Select(match =>
                    match.Groups["cents"].Success
                        ? Number(match.Groups["cents"].Value)
                            * (match.Groups["way"].Value == "sharper" ? 1 : -1)
                        : 0
                ),
        ];

    // Of the corners of the shapes of a kind, how far to the right they are.
    private static IEnumerable<double> Across(string svg, string kind) =>
        Shape()
            .Matches(svg[..svg.IndexOf("</svg", StringComparison.Ordinal)])
            .Where(shape => shape.Value.Contains($"class=\"{kind}\"", StringComparison.Ordinal))
            .SelectMany(shape => Corner().Matches(shape.Value))
            .Select(corner => Number(corner.Groups[1].Value));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Plain(string page) =>
        Mark().Replace(page, "").Replace('\u00a0', ' ').Replace("&#160;", " ", StringComparison.Ordinal);

    [GeneratedRegex(@"(?<cents>[0-9.]+) cents (?<way>sharper|flatter)|unchanged")]
    private static partial Regex Change();

    [GeneratedRegex(@"([0-9.]+) mm")]
    private static partial Regex Numbers();

    [GeneratedRegex(
        @"Push the (?<pipe>[a-z ]+) into the reducer, (?<deep>[0-9.]+) mm deep, (which leaves (?<left>[0-9.]+) mm to the stop|(?<home>to the stop))\."
    )]
    private static partial Regex Push();

    [GeneratedRegex(@">([0-9.]+)(?: |\u00a0|&#160;)mm left<")]
    private static partial Regex Left();

    [GeneratedRegex("<(path|polygon|polyline)[^>]*>")]
    private static partial Regex Shape();

    [GeneratedRegex(@"([0-9.]+),[0-9.]+")]
    private static partial Regex Corner();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Mark();
}
