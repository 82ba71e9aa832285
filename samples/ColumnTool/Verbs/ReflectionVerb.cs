using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>reflection: what of a wave into the blown end comes back.</summary>
internal static class ReflectionVerb
{
    public static Verb Create() =>
        new Verb<AtFrequency[]>
        {
            Name = "reflection",
            Summary =
                "Pressure reflection coefficient at the blown end, (Z − Z₀)/(Z + Z₀) with Z₀ = ρc/S there, exp(+jωt).",
            IsCsv = true,
            Own = AtFrequencies.Parameters,
            Members = ImpedanceVerb.Members("1", "the reflection coefficient"),
            Compute = arguments =>
            {
                var hertz = AtFrequencies.Of(arguments);
                var column = arguments.Column;
                AtFrequency[] all = AtFrequencies.Compute(() =>
                    hertz
                        .Select(one => new AtFrequency(
                            one,
                            column.ReflectionAt(Frequency.FromHertz(one), arguments.Token)
                        ))
                        .ToArray()
                );
                return (all, AtFrequencies.Warnings(column, hertz, arguments.Token));
            },
        };
}
