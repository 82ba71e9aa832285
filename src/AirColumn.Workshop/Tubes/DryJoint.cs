using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>A pipe in a tapered socket, pushed in by hand and not cemented: the pipe stops before it is home. Immutable.</summary>
/// <param name="Fitting">The index in <see cref="TubeAssembly.Parts"/> of the part with the socket.</param>
/// <param name="IsBefore">True if it is the socket on the side of the blown end.</param>
/// <param name="Pipe">The index of the pipe that goes in.</param>
/// <param name="StopsShort">The distance from home at which it stops: measured, or computed from the sizes.</param>
/// <param name="Least">The least distance, with all sizes at the ends of their tolerances.</param>
/// <param name="Most">The greatest distance.</param>
/// <param name="StandardDeviation">The standard deviation of <paramref name="StopsShort"/>.</param>
public sealed record DryJoint(
    int Fitting,
    bool IsBefore,
    int Pipe,
    Length StopsShort,
    Length Least,
    Length Most,
    Length StandardDeviation
)
{
    // Steps over each tolerance.
    private const int Steps = 25;

    internal static DryJoint Of(TubeAssembly tube, int fitting, bool isBefore)
    {
        var join = (JoinPart)tube.Parts[fitting];
        var socket = (isBefore ? join.Before : join.After)!;
        var at = tube.PlaceBeside(fitting, isBefore ? -1 : 1);
        var pipe = tube.PipeAt(at);
        var wider = pipe.Outside.Millimeters - socket.Bottom.Millimeters;
        var (ofPipe, ofSocket) = (pipe.OutsidePlusMinus.Millimeters, socket.DiameterPlusMinus.Millimeters);
        var nominal = socket.StopsShort(wider);
        var squares = 0.0;
        for (var i = 0; i < Steps; i++)
        {
            for (var k = 0; k < Steps; k++)
            {
                var (x, y) = ((2 * i + 1.0) / Steps - 1, (2 * k + 1.0) / Steps - 1);
                var off = socket.StopsShort(wider + ofPipe * x + ofSocket * y) - nominal;
                squares += off * off;
            }
        }

        return new DryJoint(
            fitting,
            isBefore,
            at,
            Length.FromMillimeters(nominal),
            Length.FromMillimeters(socket.StopsShort(wider - ofPipe - ofSocket)),
            Length.FromMillimeters(socket.StopsShort(wider + ofPipe + ofSocket)),
            Length.FromMillimeters(Math.Sqrt(squares) / Steps)
        );
    }
}
