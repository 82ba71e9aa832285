using System.Numerics;

namespace AirColumn.Tests;

/// <summary>What the engine answers at one frequency, without the checks of the public members.</summary>
internal static class EngineAnswers
{
    /// <summary>Z at the blown end at ω, rad/s.</summary>
    public static Complex AnswerAt(this Column column, double omega)
    {
        var (p, u, _) = column.Answers().At(omega / (2 * Math.PI));
        return p / u;
    }
}
