using System.Text.Json;
using AirColumn;
using AirColumn.Documents;

namespace ColumnTool.Answers;

/// <summary>What an answer rests on, in each of them: as the library writes it, or the library alone where it is about no column.</summary>
internal static class Provenances
{
    private const string Name = "provenance";

    private static readonly (string Name, string[] Types, string Unit, string Meaning)[] OfLibrary =
    [
        ("libraryVersion", ["string"], "text", "the version of the library"),
        (
            "commit",
            ["string", "null"],
            "text",
            "the commit that it was built from; `null` if the build did not know it"
        ),
    ];

    private static readonly (string Name, string[] Types, string Unit, string Meaning)[] OfColumn =
    [
        .. OfLibrary,
        (
            "documentSha256",
            ["string", "null"],
            "text",
            "SHA-256 of the document as the library writes it, in the canonical form of RFC 8785"
        ),
        ("characteristicImpedancePaSPerM3", ["number"], "Pa·s/m³", "Z₀ = ρc/S at the blown end"),
        ("wavefronts", ["string"], "text", "the wave fronts that were used; never `automatic`"),
        ("modes", ["integer"], "1", "the number of radial modes, including the plane one"),
        ("losses", ["string"], "text", "the model of the losses at the wall"),
        ("lossFactor", ["number"], "1", "the factor of these losses"),
        (
            "mutualRadiation",
            ["boolean"],
            "true or false",
            "whether openings of the column hear each other outside"
        ),
        ("airModels", ["array"], "text", "the models that gave the constants of the air"),
        ("radiation", ["string"], "text", "the model of radiation at the far end"),
        ("fingering", ["string"], "text", "the open tone holes"),
        ("sources", ["array"], "text", "keys of the sources of the formulas, in references.bib"),
    ];

    /// <summary>Writes it; of the library alone where there is no column.</summary>
    public static void Write(Utf8JsonWriter json, Provenance? provenance)
    {
        json.WriteStartObject(Name);
        if (provenance is not null)
        {
            ((IJsonAnswer)provenance).WriteMembers(json);
        }
        else
        {
            json.WriteString("libraryVersion", Provenance.LibraryVersion);
            json.WriteString("commit", Provenance.Commit);
        }

        json.WriteEndObject();
    }

    /// <summary>The schema of the member.</summary>
    public static (string Name, bool IsOptional, Action<Utf8JsonWriter> Value) Member(bool isAboutColumn) =>
        (
            Name,
            false,
            schema =>
                Schema.Type(
                    schema,
                    ["object"],
                    "the provenance of the answer",
                    inside =>
                        Schema.Members(
                            inside,
                            (isAboutColumn ? OfColumn : OfLibrary).Select(member =>
                                (
                                    member.Name,
                                    false,
                                    (Action<Utf8JsonWriter>)(
                                        s => Schema.Type(s, member.Types, member.Meaning)
                                    )
                                )
                            )
                        )
                )
        );

    /// <summary>Its rows in the reference.</summary>
    public static IEnumerable<(string Path, string Unit, string Meaning)> Rows(bool isAboutColumn) =>
        (isAboutColumn ? OfColumn : OfLibrary).Select(member =>
            ($"{Name}.{member.Name}{(member.Types[0] == "array" ? "[]" : "")}", member.Unit, member.Meaning)
        );
}
