namespace AirColumn.Recordings.Tracking;

/// <summary>Neighbouring frames that sound one note: from the first to before the last index, and their pitch, Hz.</summary>
internal readonly record struct SteadyStretch(int From, int To, double Hertz)
{
    public int Count => To - From;
}
