using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>
/// The ease with which a column speaks when blown by lips: for each register the pressure in the mouth at which a note begins, and the lips that it
/// needs.
/// </summary>
/// <remarks>
/// The thresholds are those of the linear stability of lips of one degree of freedom, blown open, on the column's input impedance (sources:
/// fletcher1993, silva2007, velut2017). They are indicators that compare columns and registers. Their frequencies do not predict the pitch:
/// such lips begin 60 to 100 cents above the resonance of a brass instrument, but players were measured about 20 cents above it (boutin2015).
/// </remarks>
public static class SpeakingThresholds
{
    private const int MostRegisters = 30;

    /// <summary>The thresholds of the lowest registers.</summary>
    /// <param name="column">The column, its blown end closed by lips.</param>
    /// <param name="lips">The lips. Default: those of a new <see cref="LipModel"/>.</param>
    /// <param name="registers">The number of registers, 1 to 30; the answer has fewer if the column has no more.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The thresholds of each register that such lips can make speak, in rising order.</returns>
    /// <exception cref="ArgumentException">The blown end of the column is open, as on a flute.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of registers is out of its range.</exception>
    public static IReadOnlyList<RegisterThreshold> Of(
        Column column,
        LipModel? lips = null,
        int registers = 6,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        Require.InRange(registers, 1, MostRegisters, "", nameof(registers));
        if (column.Options.BlownEnd.IsOpen)
        {
            throw new ArgumentException(
                "The blown end of the column is open, as on a flute; lips need it closed. Leave BlownEnd at its default.",
                nameof(column)
            );
        }

        var density = column.Air.Density.KilogramsPerCubicMeter;
        var constants = (lips ?? new LipModel()).Constants;
        return
        [
            .. column
                .FirstResonances(registers, cancellationToken)
                .Select(
                    (resonance, i) =>
                        new RegisterThreshold(
                            i + 1,
                            resonance,
                            [
                                .. LipThreshold
                                    .Of(
                                        column,
                                        resonance.Frequency.Hertz,
                                        density,
                                        constants,
                                        cancellationToken
                                    )
                                    .Select(threshold => new LipOnset(
                                        Frequency.FromHertz(threshold.Hertz),
                                        Frequency.FromHertz(threshold.LipHertz),
                                        Pressure.FromPascals(threshold.Pascal)
                                    )),
                            ]
                        )
                )
                .Where(register => register.Onsets.Count > 0),
        ];
    }
}
