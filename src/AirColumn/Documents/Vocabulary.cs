namespace AirColumn.Documents;

/// <summary>The words of documents, for reading and for writing.</summary>
internal static class Vocabulary
{
    public static Words<WallLosses> Losses { get; } =
        new(("none", WallLosses.None), ("full", WallLosses.Full), ("large-tube", WallLosses.LargeTube));

    public static Words<Wavefronts> Fronts { get; } =
        new(
            ("automatic", Wavefronts.Automatic),
            ("multimodal", Wavefronts.Multimodal),
            ("curved", Wavefronts.Curved),
            ("sloped", Wavefronts.Sloped),
            ("plane", Wavefronts.Plane)
        );

    /// <summary>Ends that radiate by a formula are named after its key in docs/references.bib.</summary>
    public static Words<RadiationModel> Radiation { get; } =
        new(
            ("exact", RadiationModel.Exact),
            ("dalmont2001", RadiationModel.Dalmont2001),
            ("norris1989", RadiationModel.Norris1989),
            ("silva2009", RadiationModel.Silva2009),
            ("causse1984", RadiationModel.Causse1984)
        );

    public static Words<AirModel> AirModels { get; } =
        new(("iec61094-2", AirModel.Iec61094), ("gas-mixture", AirModel.GasMixture));

    public static Words<HornLaw> Laws { get; } =
        new(
            ("exponential", HornLaw.Exponential),
            ("catenoidal", HornLaw.Catenoidal),
            ("parabolic", HornLaw.Parabolic),
            ("bessel", HornLaw.Bessel),
            ("cosine", HornLaw.Cosine)
        );

    public static Words<ProfileJoin> Joins { get; } =
        new(("straight", ProfileJoin.Straight), ("smooth", ProfileJoin.Smooth));
}
