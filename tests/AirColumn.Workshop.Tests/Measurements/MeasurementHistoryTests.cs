using AirColumn.Workshop.Measurements;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Measurements;

public class MeasurementHistoryTests
{
    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(17.5),
        RelativeHumidity.FromPercent(40)
    );

    [Fact]
    public void What_is_written_is_read_again()
    {
        var history = MeasurementHistory.Empty.With(One(1120, 71.25, "a")).With(One(1100.5, 72.5, ""));
        var again = MeasurementHistory.Read(history.Write());
        Assert.Equal(2, again.Taken.Count);
        foreach (var (expected, actual) in history.Taken.Zip(again.Taken))
        {
            Assert.Equal(expected.When, actual.When);
            Assert.Equal(expected.Cut.Millimeters, actual.Cut.Millimeters, 1e-9);
            Assert.Equal(expected.Heard.Hertz, actual.Heard.Hertz, 1e-9);
            Assert.Equal(expected.StandardUncertaintyCents, actual.StandardUncertaintyCents);
            Assert.Equal(17.5, actual.Air.State!.Temperature.DegreesCelsius, 1e-9);
            Assert.Equal(40, actual.Air.State.Humidity.Percent, 1e-9);
            Assert.Equal(expected.Recording, actual.Recording);
        }

        Assert.Equal(history.Write(), again.Write());
    }

    [Fact]
    public void One_recording_counts_once_and_unnamed_ones_always()
    {
        var history = MeasurementHistory
            .Empty.With(One(1120, 71, "a"))
            .With(One(1120, 71, ""))
            .With(One(1120, 71, ""))
            .With(One(1120, 71.5, "a"));
        Assert.Equal(["", "", "a"], history.Taken.Select(one => one.Recording));
        Assert.Equal(71.5, history.Taken[^1].Heard.Hertz);
    }

    [Theory]
    [InlineData("", "The history is empty; it must begin with { \"measurements\": 1.")]
    [InlineData("[]", "The history must be an object, { \"measurements\": 1, … }.")]
    [InlineData("{ \"measurements\": 2 }", "measurements: it must be 1, the version of this format.")]
    [InlineData("{ \"measurements\": 1 }", "taken: it is missing; write a list, [ … ].")]
    [InlineData(
        "{ \"measurements\": 1, \"taken\": [], \"more\": 1 }",
        "unknown key \"more\". Known here: measurements, taken."
    )]
    [InlineData("{ \"measurements\": 1, \"taken\": [ {} ] }", "taken[0].when: it is missing; write a text.")]
    [InlineData(
        "{ \"measurements\": 1, \"taken\": [ { \"when\": \"2026-01-01\", \"cut\": \"1 m\", \"heard\": \"-3 Hz\", \"temperature\": \"20 °C\", \"humidity\": \"50 %\", \"standardUncertaintyCents\": 1 } ] }",
        "taken[0].heard is -3 Hz; it must be a finite number greater than zero."
    )]
    public void A_wrong_history_is_told_with_its_place(string json, string message) =>
        Assert.Equal(message, Assert.Throws<FormatException>(() => MeasurementHistory.Read(json)).Message);

    [Property(MaxTest = 500)]
    public void Any_text_is_read_or_refused(string? text)
    {
        try
        {
            _ = MeasurementHistory.Read(text ?? "");
        }
        catch (FormatException problem)
        {
            Assert.NotEmpty(problem.Message);
        }
    }

    private static TubeMeasurement One(double cut, double heard, string recording) =>
        new(
            new DateTimeOffset(2026, 5, 2, 9, 30, 0, TimeSpan.FromHours(2)),
            Length.FromMillimeters(cut),
            Frequency.FromHertz(heard),
            0.4,
            Room,
            recording
        );
}
