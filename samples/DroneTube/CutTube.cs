using AirColumn;
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
        AirColumn.Air air,
        bool farIsClosed = false
    )
    {
        try
        {
            var tube = assembly.Assemble(cut);
            return farIsClosed
                ? tube.ColumnIn(air, new ColumnOptions { BlownEnd = BlownEnd.FreeOpen() })
                    .WithBore(tube.Bore.WithFarEnd(new ClosedEnd()))
                : tube.ColumnIn(air);
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem));
        }
    }
}
