namespace AirColumn.Recordings.Tones;

/// <summary>Which of its possible fundamentals a sound has.</summary>
/// <param name="Factor">What the pitch that was found must be multiplied by.</param>
/// <param name="Others">Other fundamentals that are possible, over the one that was chosen.</param>
/// <param name="IsTwoNotes">Whether two notes explain the sound as well as one.</param>
internal sealed record OctaveChoice(double Factor, IReadOnlyList<double> Others, bool IsTwoNotes)
{
    /// <summary>As it was found, without doubt.</summary>
    public static OctaveChoice Sure { get; } = new(1, [], false);
}
