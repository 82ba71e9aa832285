namespace AirColumn.Acoustics.Multimodal;

/// <summary>One piece of a column for the modes: carries their state from its far side to its near side.</summary>
internal abstract class ModalPiece
{
    public abstract void Carry(ModalState state);
}
