using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>A note of a tube with some finger holes open: the first resonance with these holes open. Immutable.</summary>
public sealed record FingeredNote
{
    private FingeredNote(
        IReadOnlyList<HolePart> opened,
        Fingering fingering,
        Frequency frequency,
        PitchReading nearest,
        double centsAboveDrone
    ) =>
        (Opened, Fingering, Frequency, Nearest, CentsAboveDrone) = (
            opened,
            fingering,
            frequency,
            nearest,
            centsAboveDrone
        );

    /// <summary>The holes that are open for this note and closed for the drone, from the blown end.</summary>
    public IReadOnlyList<HolePart> Opened { get; }

    /// <summary>All holes of the tube, from the blown end.</summary>
    public Fingering Fingering { get; }

    /// <summary>Its frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>The nearest note of the tuning, and the distance from it.</summary>
    public PitchReading Nearest { get; }

    /// <summary>The interval above the drone in cents.</summary>
    public double CentsAboveDrone { get; }

    /// <summary>
    /// The notes of a tube as its holes are opened one after the other from the open end; none if no hole is closed for the drone.
    /// </summary>
    /// <param name="built">The tube at a cut.</param>
    /// <param name="tuning">The tuning that names notes.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The notes, in the order in which the holes are opened.</returns>
    public static IReadOnlyList<FingeredNote> Of(
        BuiltTube built,
        Tuning tuning,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(built);
        ArgumentNullException.ThrowIfNull(tuning);
        var notes = new List<FingeredNote>();
        bool[] open = [.. built.Tube.Holes.Select(hole => hole.Hole.IsOpenInDrone)];
        var opened = new List<HolePart>();
        for (var i = open.Length - 1; i >= 0; i--)
        {
            if (open[i])
            {
                continue;
            }

            open[i] = true;
            opened.Insert(0, built.Tube.Holes[i].Hole);
            var fingering = Fingering.Of([.. open]);
            if (
                built.Column.WithFingering(fingering).FirstResonances(1, cancellationToken) is [var first]
                && OverblownNote.HasName(first.Frequency)
            )
            {
                notes.Add(
                    new FingeredNote(
                        [.. opened],
                        fingering,
                        first.Frequency,
                        first.Nearest(tuning),
                        Cents.Between(built.FirstResonance, first.Frequency)
                    )
                );
            }
        }

        return notes;
    }
}
