namespace AirColumn.Recordings.Previews;

/// <summary>
/// Renders the sound of a column blown with the lips, its drone or an overblown note, by a simple model. With it two shapes can be compared
/// by ear before either is built. The same column and options give the same samples.
/// </summary>
/// <remarks>
/// <para>
/// Model: lips of one degree of freedom (<see cref="LipModel"/>) on the reflection function of the column (schumacher1981,
/// adachi1996); the listener hears the far end as a simple source, 1 m away. The model leaves out the vocal tract, vibrato, the noise of
/// breath, the steepening of loud waves, and all sound above the end of the column's model. It shows the effect of the column on a note. It
/// does not tell how a tube will respond to a player, nor the timbre that a player gives it.
/// </para>
/// <para>
/// If no lip frequency is given, the model takes the slackest lips whose threshold of oscillation is a third of the blowing pressure. If
/// there are none, it takes those with a threshold of half that pressure; failing these, the lips of the lowest threshold. With these lips
/// the note comes nearest to its resonance and still speaks readily. The rule is our choice; a player tunes by ear.
/// </para>
/// </remarks>
public static class DronePreview
{
    private const double Semitone = 1.0594630943592953; // 2^(1/12)

    /// <summary>Renders a note.</summary>
    /// <param name="column">The column: blown end closed by the lips, far end open.</param>
    /// <param name="options">The note and how it is blown. Default: the drone, 3 s.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The note; or none, with the reason, if it does not speak in this model.</returns>
    /// <exception cref="ArgumentNullException">The column is null.</exception>
    /// <exception cref="ArgumentException">The blown end is open, or the far end closed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The column has no resonance of that register.</exception>
    public static PreviewSound Of(
        Column column,
        PreviewOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        options ??= new PreviewOptions();
        if (column.Options.BlownEnd.IsOpen)
        {
            throw new ArgumentException(
                $"column has an open blown end ({column.Options.BlownEnd}), as under an air jet; this model is of lips, which close it. "
                    + "Give a column with BlownEnd.Closed.",
                nameof(column)
            );
        }

        if (column.Bore.FarEnd is ClosedEnd)
        {
            throw new ArgumentException(
                "column has a closed far end; in this model the sound comes out there. Give a bore with an open end.",
                nameof(column)
            );
        }

        var player = new Player(column, options, cancellationToken);
        var performance = player.Play();
        return new PreviewSound(
            options,
            performance,
            performance.Status == PreviewStatus.Speaks
                ? Render(column, options, player, performance, cancellationToken)
                : null
        );
    }

    private static RenderedSound Render(
        Column column,
        PreviewOptions options,
        Player player,
        Performance performance,
        CancellationToken cancellationToken
    )
    {
        var sound = RadiatedPulse.SoundOf(
            column,
            player.Reflection,
            performance.Motion!.Outgoing,
            cancellationToken
        );
        var (start, length) = performance.Steady.GetOffsetAndLength(sound.Length);
        var square = 0.0;
        foreach (var pascal in sound.AsSpan(start, length))
        {
            square += pascal * pascal;
        }

        var (scale, peak) = (1 / PreviewSound.FullScalePascal(options), 0.0);
        for (var i = 0; i < sound.Length; i++)
        {
            sound[i] *= scale * player.Breath.FadeAt(i);
            peak = Math.Max(peak, Math.Abs(sound[i]));
        }

        return new(sound, Math.Sqrt(square / length), [.. Warnings(column, player, performance, peak)]);
    }

    private static IEnumerable<string> Warnings(
        Column column,
        Player player,
        Performance performance,
        double peak
    )
    {
        if (peak > 1)
        {
            yield return $"The sound reaches {Require.Show(Math.Round(peak, 2), "")} times full scale; a file of whole numbers would clip it. "
                + "Set FullScale higher, and to the same value for all sounds to be compared.";
        }

        if (performance.Hertz > performance.Resonance.Frequency.Hertz * Semitone)
        {
            yield return "The note lies more than a semitone above its resonance: the lips of this model determine it more than the column does. "
                + "Do not judge the pitch by it.";
        }

        if (player.Reflection.WorstCents > 0.1)
        {
            yield return $"The reflection function moves a resonance by {Require.Show(Math.Round(player.Reflection.WorstCents, 2), "cents")}.";
        }

        if (column.Bore.Holes.Count > 0)
        {
            yield return "The sound from open holes is left out; only the far end is heard.";
        }

        foreach (var warning in player.Warnings)
        {
            yield return warning;
        }
    }
}
