namespace Samples.Tests;

/// <summary>
/// A lossless cylinder of 1 m in a gas of given constants: the textbook case whose answers are closed formulas
/// (chaigne2016, ch. 7, from memory): closed at the far end Z = −jZ₀·cot kL, ideally open Z = jZ₀·tan kL, Z₀ = ρc/S;
/// the latter is largest at odd multiples of c/4L.
/// </summary>
internal static class IdealTube
{
    public const double SpeedOfSound = 340;
    public const double Length = 1;
    public const double CharacteristicImpedance = 1.2 * SpeedOfSound / (Math.PI * 0.02 * 0.02);

    public static string Closed => Document("closed");

    public static string Open => Document("ideal");

    public static double WaveNumber(double frequency) => 2 * Math.PI * frequency / SpeedOfSound;

    private static string Document(string farEnd) =>
        $$"""
            {
              "column": 1,
              "name": "ideal tube",
              "air": { "speedOfSound": "340 m/s", "density": "1.2 kg/m3", "viscosity": "1.8e-5 Pa s",
                       "conductivity": "0.0258 W/(m K)", "heatCapacity": "1006 J/(kg K)", "heatCapacityRatio": 1.4 },
              "losses": "none",
              "sections": [
                { "shape": "cylinder", "diameter": "40 mm", "length": "25 cm" },
                { "shape": "cylinder", "diameter": "4 cm", "length": "0.75 m" }
              ],
              "farEnd": { "kind": "{{farEnd}}" }
            }
            """;
}
