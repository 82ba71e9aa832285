using FsCheck.Xunit;

namespace TestRuns;

/// <summary>A property that is slow: tried on a few draws in the test command, on many in the long run. FsCheck says how to replay one that failed.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class DrawsAttribute : PropertyAttribute
{
    public DrawsAttribute(int quick, int inLong)
    {
        MaxTest = Amount.Of(quick, inLong);
    }
}
