namespace AirColumn;

/// <summary>
/// One of the gases of humid air: molar mass in kg/mol and a₁ to a₇ of its heat capacity as an ideal gas,
/// Cp/R = Σ aᵢ·Tⁱ⁻³, 200 to 1000 K (mcbride2002).
/// </summary>
internal sealed record Species(double MolarMass, double[] Coefficients)
{
    public static Species Nitrogen { get; } =
        new(
            28.0134e-3,
            [
                2.210371497e4,
                -3.818461820e2,
                6.082738360,
                -8.530914410e-3,
                1.384646189e-5,
                -9.625793620e-9,
                2.519705809e-12,
            ]
        );

    public static Species Oxygen { get; } =
        new(
            31.9988e-3,
            [
                -3.425563420e4,
                4.847000970e2,
                1.119010961,
                4.293889240e-3,
                -6.836300520e-7,
                -2.023372700e-9,
                1.039040018e-12,
            ]
        );

    public static Species Argon { get; } = new(39.948e-3, [0, 0, 2.5, 0, 0, 0, 0]);

    public static Species CarbonDioxide { get; } =
        new(
            44.0095e-3,
            [
                4.943650540e4,
                -6.264116010e2,
                5.301725240,
                2.503813816e-3,
                -2.127308728e-7,
                -7.689988780e-10,
                2.849677801e-13,
            ]
        );

    public static Species Water { get; } =
        new(
            18.01528e-3,
            [
                -3.947960830e4,
                5.755731020e2,
                9.317826530e-1,
                7.222712860e-3,
                -7.342557370e-6,
                4.955043490e-9,
                -1.336933246e-12,
            ]
        );

    /// <summary>Cp/R as an ideal gas, dimensionless.</summary>
    public double HeatCapacity(double kelvin)
    {
        var (sum, power) = (0.0, 1 / (kelvin * kelvin));
        foreach (var coefficient in Coefficients)
        {
            sum += coefficient * power;
            power *= kelvin;
        }

        return sum;
    }
}
