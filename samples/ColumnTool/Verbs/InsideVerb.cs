using System.Numerics;
using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>inside: the standing wave along the bore.</summary>
internal static class InsideVerb
{
    private static readonly Parameter<Frequency> At = new(
        "frequency",
        Kinds.Frequency,
        "the frequency: a number of Hz, or with its unit",
        Parameter.Required
    );

    private static readonly Parameter<int> Points = new(
        "points",
        new WholeKind(2, 1_000_000),
        "the number of places, equally spaced, including both ends: 2 to 1 000 000",
        "101, or those named"
    );

    private static readonly Parameter<Length[]> Places = new(
        "places",
        Kinds.Listed(Kinds.Length, 1, 100_000),
        "distances from the blown end with their units; on the command line separated by commas",
        "equally spaced ones"
    );

    private readonly record struct Row(double Metres, Complex Pressure, Complex Flow);

    public static Verb Create() =>
        new Verb<Row[]>
        {
            Name = "inside",
            Summary =
                "Pressure and flow along the bore at one frequency, complex amplitudes, exp(+jωt), for a source of 1. At a closed blown end the source is a flow of 1 m³/s into the column, at an open blown end a pressure of 1 Pa.",
            IsCsv = true,
            Own = [At, Points, Places],
            Members =
            [
                Fields<Row[]>.Columns(
                    rows => rows,
                    [
                        Fields<Row>.Number(
                            "positionMetres",
                            "m",
                            "distance from the blown end",
                            row => row.Metres
                        ),
                        .. Fields<Row>.Complex("pressure", "Pa per source", "pressure", row => row.Pressure),
                        .. Fields<Row>.Complex(
                            "flow",
                            "m³/s per source",
                            "flow towards the far end",
                            row => row.Flow
                        ),
                    ]
                ),
            ],
            Compute = Compute,
        };

    private static (Row[] Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
    {
        if (arguments.Has(Points) && arguments.Has(Places))
        {
            throw arguments.Wrong(Places, $"and {arguments.Name(Points)} are both given; give one of them.");
        }

        var (column, frequency) = (arguments.Column, arguments.Get(At));
        var wave = arguments.Has(Places)
            ? arguments.Blame(
                Places,
                () => column.StandingWaveAt(frequency, arguments.Get(Places), arguments.Token)
            )
            : arguments.Blame(
                At,
                () => column.StandingWaveAt(frequency, arguments.Get(Points, 101), arguments.Token)
            );
        return (
            [
                .. Enumerable
                    .Range(0, wave.Count)
                    .Select(i => new Row(wave.Metres[i], wave.Pressure[i], wave.Flow[i])),
            ],
            wave.Warnings
        );
    }
}
