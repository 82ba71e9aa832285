using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn.Documents;

/// <summary>The provenance of an answer. Keep it with the answer: with it the answer can be computed again. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<Provenance>))]
public sealed class Provenance : IJsonAnswer
{
    private static readonly string[] Informational =
    [
        .. (
            typeof(Provenance)
                .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()
                ?.InformationalVersion
            ?? ""
        ).Split('+', 2),
    ];

    private Provenance(Column column, string? documentSha256, CancellationToken cancellationToken)
    {
        DocumentSha256 = documentSha256;
        CharacteristicImpedance = column.CharacteristicImpedance;
        Wavefronts = column.Wavefronts;
        Modes = column.ModeCount(cancellationToken);
        Losses = column.Options.Losses;
        LossFactor = column.Options.LossFactor;
        MutualRadiation = column.HasMutualRadiation;
        Radiation = column.Options.Radiation.Name;
        Fingering = column.Options.Fingering;
        var airs = column.AirProfile.Fillings(column.Bore.LengthMetres).ToList();
        AirModels = [.. airs.Select(air => air.Model).Distinct().Order()];
        Sources = SourceKeys.Of(column, airs);
    }

    /// <summary>The version of the library, such as "0.1.0".</summary>
    public static string LibraryVersion => Informational[0];

    /// <summary>The commit that the library was built from; null if the build did not know it.</summary>
    public static string? Commit => Informational.Length > 1 ? Informational[1] : null;

    /// <summary>
    /// <see cref="ColumnDocument.Sha256"/> of the document that was asked about; null if the radiation of the far end is a function, which
    /// no document can hold.
    /// </summary>
    public string? DocumentSha256 { get; }

    /// <summary>Z₀ = ρc/S at the blown end, Pa·s/m³: the reference of relative impedance and reflection.</summary>
    public double CharacteristicImpedance { get; }

    /// <summary>
    /// The wave fronts that were used. If <see cref="AirColumn.Wavefronts.Automatic"/> was asked for, they are the model that it chose.
    /// </summary>
    public Wavefronts Wavefronts { get; }

    /// <summary>The number of radial modes carried, including the plane one.</summary>
    public int Modes { get; }

    /// <summary>The model of the losses at the wall.</summary>
    public WallLosses Losses { get; }

    /// <summary>The factor of these losses, <see cref="ColumnOptions.LossFactor"/>.</summary>
    public double LossFactor { get; }

    /// <summary>Whether openings of the column hear each other outside. False if the column has fewer than two openings that could.</summary>
    public bool MutualRadiation { get; }

    /// <summary>
    /// The models that gave the constants of the air along the bore; several if the air changes from the range of one model to the range of another.
    /// </summary>
    public IReadOnlyList<AirModel> AirModels { get; }

    /// <summary>The name of the model of radiation at the far end.</summary>
    public string Radiation { get; }

    /// <summary>The open tone holes.</summary>
    public Fingering Fingering { get; }

    /// <summary>Keys of the sources of the formulas used, in the bibliography references.bib that comes with the package.</summary>
    public IReadOnlyList<string> Sources { get; }

    /// <summary>The provenance of the answers of a column.</summary>
    /// <param name="column">The column that answered.</param>
    /// <param name="document">The document that the column was made from. Default: the document of the column.</param>
    /// <param name="cancellationToken">
    /// Ends the computation early with an <see cref="OperationCanceledException"/>. The number of modes may have to be computed.
    /// </param>
    /// <returns>The provenance.</returns>
    /// <exception cref="ArgumentNullException">The column is null.</exception>
    /// <exception cref="ArgumentException">No document is given, and the column has more sections than a document can hold.</exception>
    public static Provenance Of(
        Column column,
        ColumnDocument? document = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        if (document is null && column.Options.Radiation.Impedance is null)
        {
            document = new ColumnDocument(column.Bore, column.AirProfile, column.Options);
        }

        return new Provenance(column, document?.Sha256(), cancellationToken);
    }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.WriteString("libraryVersion", LibraryVersion);
        json.WriteString("commit", Commit);
        json.WriteString("documentSha256", DocumentSha256);
        json.Number("characteristicImpedancePaSPerM3", CharacteristicImpedance);
        json.WriteString("wavefronts", Vocabulary.Fronts.For(Wavefronts));
        json.WriteNumber("modes", Modes);
        json.WriteString("losses", Vocabulary.Losses.For(Losses));
        json.Number("lossFactor", LossFactor);
        json.WriteBoolean("mutualRadiation", MutualRadiation);
        json.Texts("airModels", AirModels.Select(model => Vocabulary.AirModels.For(model) ?? "constants"));
        json.WriteString("radiation", Radiation);
        json.WriteString("fingering", Fingering.ToString());
        json.Texts("sources", Sources);
    }

    /// <summary>Version and models, in the invariant culture.</summary>
    /// <returns>Version and models, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"AirColumn {LibraryVersion}; wave fronts {Wavefronts}, modes {Modes}, losses {Losses}, radiation {Radiation}"
        );
}
