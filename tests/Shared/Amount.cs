namespace TestRuns;

/// <summary>
/// How much is tested. The test command does in minutes what finds nearly every fault; with <c>AIRCOLUMN_LONG=true</c> it draws more, and
/// also does what takes minutes by itself: the tests of the trait <c>Run=Long</c>, which quick.runsettings leaves out.
/// </summary>
internal static class Amount
{
    /// <summary>The trait of tests that only the long run does.</summary>
    public const string Trait = "Run";

    /// <summary>Its value.</summary>
    public const string Long = "Long";

    /// <summary>Whether all is asked for.</summary>
    public static bool IsLong { get; } = Environment.GetEnvironmentVariable("AIRCOLUMN_LONG") == "true";

    /// <summary>One in the test command, the other in the long run.</summary>
    public static T Of<T>(T quick, T inLong) => IsLong ? inLong : quick;
}
