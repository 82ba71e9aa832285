namespace StudyCluster;

/// <summary>The one place that knows who computes which part. Its key is the hash of the study.</summary>
internal interface IStudyLedger : IGrainWithStringKey
{
    /// <summary>Claims a part for a silo; null where none is free.</summary>
    Task<long?> Claim(SiloAddress silo);

    /// <summary>Says that a part is in the folder.</summary>
    Task Keep(long part);

    /// <summary>Gives a part back that could not be written.</summary>
    Task GiveBack(long part);

    /// <summary>How far it is.</summary>
    Task<StudyState> State();
}

/// <summary>How far a study is.</summary>
/// <param name="Parts">How many parts it has.</param>
/// <param name="Kept">How many are in the folder.</param>
/// <param name="Silos">How many living silos have claimed a part: not how many hold one, since that falls to none between two parts.</param>
[GenerateSerializer, Immutable]
internal sealed record StudyState(
    [property: Id(0)] long Parts,
    [property: Id(1)] long Kept,
    [property: Id(2)] int Silos
)
{
    /// <summary>Whether all of it is there.</summary>
    public bool IsComplete => Kept == Parts;
}
