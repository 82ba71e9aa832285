using ColumnTool.Questions;

namespace ColumnTool.Verbs;

/// <summary>Every kind of question.</summary>
internal static class AllVerbs
{
    public static IReadOnlyList<Verb> List { get; } =
    [
        ColumnVerb.Create(),
        ImpedanceVerb.Create(),
        ReflectionVerb.Create(),
        MatrixVerb.Create(),
        TransferVerb.Create(),
        ResonancesVerb.Create(),
        InsideVerb.Create(),
        PowerVerb.Create(),
        QualityVerb.Create(),
        LengthVerb.Create(),
        ShapeVerb.Create(),
        HolesVerb.Create(),
        UncertaintyVerb.Create(),
        FitVerb.Create(),
        TrimVerb.Create(),
        AirVerb.Create(),
    ];

    private static readonly Dictionary<string, Verb> ByName = List.ToDictionary(verb => verb.Name);

    /// <summary>What they are called.</summary>
    public static IEnumerable<string> Names => List.Select(verb => verb.Name);

    /// <summary>That of a name, or null.</summary>
    public static Verb? Find(string name) => ByName.GetValueOrDefault(name);
}
