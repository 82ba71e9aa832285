using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// What the column beyond a place is to the modes there, at eight frequencies: W = H·P, W = jωρ·U, and the wave that arrives at the
/// far end, t·P. H is complex symmetric: reciprocity.
/// </summary>
internal sealed class ModalState
{
    private ComplexVector[] room = [];

    public ModalState(int modes, in FrequencyVector frequencies)
    {
        Modes = modes;
        Frequencies = frequencies;
        H = new ComplexVector[modes * modes];
        T = new ComplexVector[modes];
    }

    public int Modes { get; }

    public FrequencyVector Frequencies { get; }

    /// <summary>Volume flow (times jωρ) that the modes' pressures send towards the far end, m.</summary>
    public ComplexVector[] H { get; }

    /// <summary>The pressure of the wave that goes out at the far end, per pressure of each mode.</summary>
    public ComplexVector[] T { get; }

    /// <summary>Room for a piece to work in, its contents left over from the one before.</summary>
    public Span<ComplexVector> Room(int count)
    {
        if (room.Length < count)
        {
            room = new ComplexVector[count];
        }

        return room.AsSpan(0, count);
    }

    /// <summary>k, 1/m.</summary>
    public RealVector Wavenumber(double speedOfSound) => Frequencies.Omega * (1 / speedOfSound);
}
