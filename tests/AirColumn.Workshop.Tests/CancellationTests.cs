using AirColumn.Workshop.Cutting;
using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests;

/// <summary>Calls of the workshop end when they are cancelled, and answer right afterwards.</summary>
public class CancellationTests
{
    private static readonly Pitch Note = Pitch.Parse("D2");

    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(20),
        RelativeHumidity.FromPercent(50)
    );

    private static readonly TubeAssembly Pipe = TubeAssembly.OnePipe(
        Length.FromMillimeters(38),
        Length.FromMillimeters(2)
    );

    private static readonly TubeBuild Build = TubeBuilder.Plan(Pipe, Note, Tuning.Concert, Room);

    private static readonly CutPiece[] Pieces =
    [
        .. Enumerable
            .Range(0, 40)
            .Select(i => new CutPiece($"{i}", SawLength.Given(Length.FromMillimeters(400 + 37 * i % 900)))),
    ];

    private static readonly Dictionary<string, Func<CancellationToken, string>> Calls = new()
    {
        ["plan"] = token => TubeBuilder.Plan(Pipe, Note, Tuning.Concert, Room, null, token).Explanation,
        ["exact"] = token =>
            $"{TubeBuilder.Exact(Pipe, Note, Tuning.Concert, Room, null, null, token).Exact!.Cut.Meters:R}",
        ["rest of a plan"] = token =>
            TubeBuilder.Exact(Pipe, Note, Tuning.Concert, Room).Plan(token).Explanation,
        ["trim"] = token => $"{Build.Trim(token)!.Rows[^1]}",
        ["trim in inches"] = token => $"{Build.TrimInches(token)!.Rows[^1]}",
        ["dry"] = token =>
            $"{Tubes.TubeBuilderTests.Stepped.Dry!.Tuning(Length.FromMillimeters(1100), Room, Frequency.FromHertz(73.42), token)!.CentsToHome:R}",
        ["advice"] = token =>
            TrimAdvice.For(Pipe, Build.Target, Build.FirstCut!.Cut, Room, [], null, token).Table.Explanation,
        ["advice for a short tube"] = token =>
            $"{TrimAdvice.For(Pipe, Build.Target, Build.Exact!.Cut * 0.9, Room, [], null, token).Lengthening}",
        ["what if"] = token => string.Join('\n', WhatIf.Of(Build, LengthUnits.Both, token)),
        ["quarter wave"] = token => $"{QuarterWaveRule.Of(Build, token).Difference.Meters:R}",
        ["sheet"] = token => BuildSheet.Html(Build, "", LengthUnits.Millimetres, token),
        ["sheet in both units"] = token => BuildSheet.Html(Build, "", token),
        ["impedance"] = token =>
            TubePictures.Impedance(
                TubeBuilder.Exact(Pipe, Note, Tuning.Concert, Room),
                Note,
                Tuning.Concert,
                token
            ),
        ["cuts"] = token =>
            string.Join(
                '\n',
                StockCuts
                    .Plan(
                        Pieces,
                        Length.FromMeters(3),
                        Length.FromMillimeters(3),
                        LengthUnits.Millimetres,
                        token
                    )
                    .Describe()
            ),
    };

    public static TheoryData<string> AllCalls => [.. Calls.Keys];

    [Theory]
    [MemberData(nameof(AllCalls))]
    public async Task A_call_ends_when_it_is_cancelled_and_answers_right_afterwards(string name)
    {
        var call = Calls[name];
        using var before = new CancellationTokenSource();
        before.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => call(before.Token));
        var expected = call(CancellationToken.None);
        var random = new Random(name.Length);
        for (var round = 0; round < 5; round++)
        {
            using var source = new CancellationTokenSource();
            var spins = 1 << random.Next(2, 22);
            var other = Task.Run(() =>
            {
                Thread.SpinWait(spins);
                source.Cancel();
            });
            try
            {
                Assert.Equal(expected, call(source.Token));
            }
            catch (OperationCanceledException)
            {
                // As it should.
            }

            await other;
        }

        Assert.Equal(expected, call(CancellationToken.None));
    }
}
