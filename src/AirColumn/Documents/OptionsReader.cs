namespace AirColumn.Documents;

/// <summary>Reads how the column is computed and blown.</summary>
internal static class OptionsReader
{
    /// <summary>Reads the options of a document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="holes">How many tone holes its bore has.</param>
    public static ColumnOptions Read(DocumentObject document, int holes)
    {
        var standard = new ColumnOptions();
        var tolerance = document.Optional("tolerance")?.Number() ?? standard.RelativeTolerance;
        var lossFactor = document.Optional("lossFactor")?.Number() ?? standard.LossFactor;
        var options = new ColumnOptions
        {
            Losses = Word(document, "losses", Vocabulary.Losses, WallLosses.Full),
            Wavefronts = Word(document, "wavefronts", Vocabulary.Fronts, Wavefronts.Automatic),
            Radiation = Word(document, "radiation", Vocabulary.Radiation, RadiationModel.Exact),
            Modes = Modes(document.Optional("modes")),
            MutualRadiation = document.Optional("mutualRadiation")?.Truth() ?? standard.MutualRadiation,
            BlownEnd = EndReader.Blown(document),
            Fingering = document.Optional("fingering") is { } fingering
                ? FingeringReader.Read(fingering, holes)
                : Fingering.AllOpen,
        };
        return Checked.Make(
            document,
            () => options with { RelativeTolerance = tolerance, LossFactor = lossFactor },
            (nameof(ColumnOptions.RelativeTolerance), document.PathOf("tolerance")),
            (nameof(ColumnOptions.LossFactor), document.PathOf("lossFactor"))
        );
    }

    private static T Word<T>(DocumentObject document, string key, Words<T> words, T ifLeftOut)
        where T : notnull => document.Optional(key) is { } value ? words.Read(value) : ifLeftOut;

    private static int? Modes(DocumentValue? modes)
    {
        if (modes is null)
        {
            return null;
        }

        var count = modes.Number();
        return count is >= 1 and <= ColumnOptions.MostModes && count == Math.Floor(count)
            ? (int)count
            : throw modes.Wrong(
                $"it must be a whole number from 1 to {ColumnOptions.MostModes}; if you leave it out, the number is chosen for the bore."
            );
    }
}
