namespace ColumnTool.Questions;

/// <summary>What to do about questions that take long.</summary>
internal static class Advice
{
    public const string Expensive =
        "Steep or jagged profiles, many close steps and many resonances take long, most of all under the wave fronts \"automatic\" and \"multimodal\": try \"curved\", a smoother or coarser profile, or fewer resonances.";
}
