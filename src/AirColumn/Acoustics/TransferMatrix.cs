using System.Numerics;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>
/// The two-port of a piece of bore. It gives pressure and flow (p₁, U₁) on the side of the blown end from (p₂, U₂) on the side of the far
/// end: p₁ = A·p₂ + B·U₂ and U₁ = C·p₂ + D·U₂. Time dependence is exp(+jωt), and flow counts towards the far end.
/// </summary>
/// <param name="A">Pressure ratio with no flow at the far side, dimensionless.</param>
/// <param name="B">Transfer impedance, Pa·s/m³.</param>
/// <param name="C">Transfer admittance, m³/(Pa·s).</param>
/// <param name="D">Flow ratio with no pressure at the far side, dimensionless.</param>
[JsonConverter(typeof(JsonAnswerConverter<TransferMatrix>))]
public readonly record struct TransferMatrix(Complex A, Complex B, Complex C, Complex D) : IJsonAnswer
{
    /// <summary>The two-port of a bore of length 0.</summary>
    public static TransferMatrix Identity => new(1, 0, 0, 1);

    /// <summary>A·D − B·C: 1 for every reciprocal piece of bore.</summary>
    public Complex Determinant => A * D - B * C;

    /// <summary>Impedance seen at the blown side when the far side is loaded, Pa·s/m³.</summary>
    /// <param name="load">Impedance p₂/U₂ at the far side, Pa·s/m³; finite.</param>
    /// <returns>The impedance, Pa·s/m³.</returns>
    public Complex InputImpedance(Complex load) => (A * load + B) / (C * load + D);

    /// <summary>Two pieces one after the other; the left one is nearer the blown end.</summary>
    public static TransferMatrix operator *(TransferMatrix left, TransferMatrix right) =>
        new(
            left.A * right.A + left.B * right.C,
            left.A * right.B + left.B * right.D,
            left.C * right.A + left.D * right.C,
            left.C * right.B + left.D * right.D
        );

    /// <summary>Two pieces one after the other; the left one is nearer the blown end.</summary>
    /// <param name="left">The piece nearer the blown end.</param>
    /// <param name="right">The piece nearer the far end.</param>
    /// <returns>The matrix of both pieces.</returns>
    public static TransferMatrix Multiply(TransferMatrix left, TransferMatrix right) => left * right;

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Number("a", A);
        json.Number("bPaSPerM3", B);
        json.Number("cM3PerPaS", C);
        json.Number("d", D);
    }
}
