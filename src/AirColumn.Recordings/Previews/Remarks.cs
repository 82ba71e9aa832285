namespace AirColumn.Recordings.Previews;

/// <summary>What became of a note, in a sentence.</summary>
internal static class Remarks
{
    public static string Speaks(Blown blown, double hertz, double cents) =>
        $"{blown.Name} plays {Hertz(hertz)}, {Require.Show(Math.Round(Math.Abs(cents), 1), "cents")} "
        + $"{(cents < 0 ? "below" : "above")} its resonance, {blown}.";

    public static string Silent(Blown blown, double thresholdPascal) =>
        $"{blown.Name} does not speak in this model, {blown}."
        + (
            thresholdPascal > 0
                ? $" With lips tuned best it takes {Pascal(thresholdPascal)} to begin."
                : " No tension of these lips makes it begin."
        );

    public static string OtherRegister(Blown blown, int register, double hertz) =>
        $"{blown.Name} does not speak in this model, {blown}: register {register} sounds, at {Hertz(hertz)}. Leave the lip frequency "
        + "out, or set one nearer to the note.";

    public static string Unsteady(Blown blown) =>
        $"{blown.Name} does not settle in this model within the time, {blown}. Ask for a longer sound or another pressure.";

    public static string NoLips(int register, double resonance) =>
        $"Register {register} does not speak in this model: no tension of these lips makes the column sound just above its resonance at "
        + $"{Hertz(resonance)}. Try other lips, or a shape with a stronger resonance there.";

    public static string BeyondBreath(int register, double thresholdPascal) =>
        $"Register {register} does not speak in this model: with lips tuned best it takes {Pascal(thresholdPascal)} to begin, more than "
        + $"players blow ({Pascal(PreviewOptions.HighestPascal)}). Try lighter or wider lips.";

    private static string Hertz(double hertz) => Require.Show(Math.Round(hertz, 2), "Hz");

    private static string Pascal(double pascal) => Require.Show(Math.Round(pascal), "Pa");

    /// <summary>How a note was blown.</summary>
    internal readonly record struct Blown(int Register, double Pressure, double LipHertz)
    {
        public string Name => $"Register {Register}";

        public override string ToString() => $"blown with {Pascal(Pressure)}, lips at {Hertz(LipHertz)}";
    }
}
