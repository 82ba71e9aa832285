using System.Globalization;

namespace AirColumn.Studies;

/// <summary>The questions that a study asks of each of its columns. Immutable.</summary>
public sealed record StudyAnswers
{
    internal StudyAnswers() { }

    /// <summary>The number of resonances, from the lowest on: 0 to 100.</summary>
    public int Resonances { get; internal init; }

    /// <summary>True if each resonance is given with its distance in cents above the first.</summary>
    public bool Intervals { get; internal init; }

    /// <summary>True if the resonances are given with their quality factors.</summary>
    public bool QualityFactors { get; internal init; }

    /// <summary>True if the resonances are given with |Z|.</summary>
    public bool Magnitudes { get; internal init; }

    /// <summary>True if each resonance is given with its derivative with respect to every parameter of the study.</summary>
    public bool Gradients { get; internal init; }

    /// <summary>True if the answers include the indicators of <see cref="AirColumn.QualityIndicators"/>.</summary>
    public bool Indicators { get; internal init; }

    /// <summary>The frequencies of the input impedance, Hz, rising; empty for none.</summary>
    public IReadOnlyList<double> ImpedanceAtHertz { get; internal init; } = [];

    /// <summary>A field for each number that is answered.</summary>
    internal IEnumerable<StudyField> Fields(IReadOnlyList<StudyParameter> parameters)
    {
        foreach (var n in Each(1, true))
        {
            yield return new($"f{n}_hz", "Hz", $"frequency of resonance {n}");
        }

        foreach (var n in Each(2, Intervals))
        {
            yield return new($"interval{n}_cents", "cent", $"from resonance 1 to resonance {n}");
        }

        foreach (var n in Each(1, QualityFactors))
        {
            yield return new($"q{n}", "", $"quality factor of resonance {n}");
        }

        foreach (var n in Each(1, Magnitudes))
        {
            yield return new($"z{n}_pa_s_per_m3", "Pa·s/m³", $"|Z| at resonance {n}");
        }

        foreach (var n in Each(1, Gradients))
        {
            foreach (var parameter in parameters)
            {
                var unit = parameter.Parameter.Unit is { Length: > 0 } one ? one : "1";
                yield return new(
                    $"f{n}_hz_per_{Small(unit)}_{parameter.Slug}",
                    $"Hz/{unit}",
                    $"by how much resonance {n} follows the {parameter}"
                );
            }
        }

        if (Indicators)
        {
            yield return new(
                "first_peak_height",
                "",
                "|Z| at the first resonance over ρc/S at the blown end"
            );
            yield return new(
                "mean_impedance_pa_s_per_m3",
                "Pa·s/m³",
                "geometric mean of |Z| from 1 kHz to 2 kHz"
            );
        }

        for (var i = 0; i < ImpedanceAtHertz.Count; i++)
        {
            var hertz = ImpedanceAtHertz[i].ToString("R", CultureInfo.InvariantCulture);
            yield return new($"re_z_at{i + 1}_pa_s_per_m3", "Pa·s/m³", $"real part of Z at {hertz} Hz");
            yield return new($"im_z_at{i + 1}_pa_s_per_m3", "Pa·s/m³", $"imaginary part of Z at {hertz} Hz");
        }
    }

    /// <summary>How many of the fields are about resonances; they come first.</summary>
    internal int NumbersOfResonances(int parameters) =>
        Resonances * (1 + (QualityFactors ? 1 : 0) + (Magnitudes ? 1 : 0) + (Gradients ? parameters : 0))
        + (Intervals ? Math.Max(0, Resonances - 1) : 0);

    /// <summary>A unit as it stands in names.</summary>
    internal static string Small(string unit) =>
        unit switch
        {
            "K" => "k",
            "Pa" => "pa",
            _ => unit,
        };

    private IEnumerable<int> Each(int first, bool isAsked) =>
        isAsked && Resonances >= first ? Enumerable.Range(first, Resonances - first + 1) : [];
}
