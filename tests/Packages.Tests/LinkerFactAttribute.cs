namespace Packages.Tests;

/// <summary>A test that compiles ahead of time, for which the SDK wants a C compiler to link with.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LinkerFactAttribute : FactAttribute
{
    public LinkerFactAttribute()
    {
        var paths = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var isThere = paths.Any(path =>
            File.Exists(Path.Combine(path, "clang")) || File.Exists(Path.Combine(path, "gcc"))
        );
        if (!isThere || OperatingSystem.IsWindows())
        {
            Skip = "There is no clang or gcc to link with.";
        }
    }
}
