namespace Samples.Tests;

/// <summary>A test that needs the shell of Unix.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class UnixFactAttribute : FactAttribute
{
    public UnixFactAttribute()
    {
        if (OperatingSystem.IsWindows())
        {
            Skip = "There is no sh on Windows.";
        }
    }
}

/// <summary>The same for several rows of data.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class UnixTheoryAttribute : TheoryAttribute
{
    public UnixTheoryAttribute()
    {
        if (OperatingSystem.IsWindows())
        {
            Skip = "There is no sh on Windows.";
        }
    }
}
