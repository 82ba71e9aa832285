using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>A tube as it is cut now.</summary>
internal static class CutTube
{
    /// <summary>Its column: closed by lips or a palm at the mouth, or at the far end and open at the mouth.</summary>
    public static Column Column(
        TubeAssembly assembly,
        Length cut,
        AirColumn.Gases.Air air,
        bool farIsClosed = false
    )
    {
        try
        {
            var bore = assembly.Assemble(cut).Bore;
            return farIsClosed
                ? new Column(
                    bore.WithFarEnd(new ClosedEnd()),
                    air,
                    new ColumnOptions { BlownEnd = BlownEnd.FreeOpen() }
                )
                : new Column(bore, air);
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem));
        }
    }
}
