using System.Diagnostics;

namespace Studies.Tests;

/// <summary>A test on a disk of its own: where Linux lets a user have one in memory, in a namespace that ends with its shell.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class TinyDiskFactAttribute : FactAttribute
{
    public TinyDiskFactAttribute()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            Skip = Run(folder, "16k", "true").Code == 0 ? null : "No disk can be mounted here.";
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Skip = "There is no unshare here.";
        }
        finally
        {
            Directory.Delete(folder);
        }
    }

    /// <summary>Runs lines of a shell that sees such a disk in a folder.</summary>
    public static (int Code, string Output, string Error) Run(string folder, string size, string lines)
    {
        using var process = Process.Start(
            new ProcessStartInfo(
                "unshare",
                ["-rm", "sh", "-c", $"mount -t tmpfs -o size={size} none \"{folder}\" || exit 9\n{lines}"]
            )
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.GetAwaiter().GetResult());
    }
}
