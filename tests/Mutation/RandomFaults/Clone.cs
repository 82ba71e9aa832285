using System.Diagnostics;
using System.Globalization;
using System.Xml.Linq;

/// <summary>The folder whose sources get the faults: how it is built and tested.</summary>
internal sealed class Clone(string top)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    public string Top => top;

    public void Build(Package package)
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [
                "build",
                Path.Combine(top, "tests", package.Project),
                "-c",
                "Release",
                "-p:RunAnalyzers=false",
                "-p:TreatWarningsAsErrors=false",
                "-v:q",
            ]
        )
        {
            RedirectStandardOutput = true,
            WorkingDirectory = top,
        };
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException(said);
        }
    }

    /// <summary>How many seconds each test takes without a fault, with all its cases.</summary>
    public IReadOnlyDictionary<string, double> Times(Package package)
    {
        var results = Directory.CreateTempSubdirectory("faults");
        var (outcome, test) = Run(
            package,
            package.Tests,
            null,
            ["--logger:trx", $"--ResultsDirectory:{results.FullName}"]
        );
        if (outcome != Outcome.Survived)
        {
            throw new InvalidOperationException(
                $"The tests of {package.Name} fail with no fault switched on: {test}."
            );
        }

        var report = XDocument.Load(results.EnumerateFiles("*.trx").Single().FullName);
        results.Delete(true);
        XNamespace space = report.Root!.Name.Namespace;
        var names = report
            .Descendants(space + "UnitTest")
            .ToDictionary(
                test => test.Attribute("id")!.Value,
                test =>
                    $"{test.Element(space + "TestMethod")!.Attribute("className")!.Value}."
                    + test.Element(space + "TestMethod")!.Attribute("name")!.Value.Split('(')[0]
            );
        return report
            .Descendants(space + "UnitTestResult")
            .GroupBy(
                result => names[result.Attribute("testId")!.Value],
                result =>
                    TimeSpan
                        .Parse(result.Attribute("duration")!.Value, CultureInfo.InvariantCulture)
                        .TotalSeconds
            )
            .ToDictionary(test => test.Key, test => test.Sum());
    }

    /// <summary>What becomes of a fault on these tests, and the first test that fails.</summary>
    public (Outcome Outcome, string? Test) Run(Package package, IEnumerable<string> tests, Fault fault) =>
        tests.ToArray() is { Length: > 0 } names
            ? Run(package, string.Join('|', names.Select(name => $"FullyQualifiedName={name}")), fault, [])
            : (Outcome.Survived, null);

    private (Outcome Outcome, string? Test) Run(
        Package package,
        string filter,
        Fault? fault,
        string[] arguments
    )
    {
        var settings = Path.Combine(top, $"faults.runsettings.{package.Name}.{fault?.Number}");
        new XElement(
            "RunSettings",
            new XElement("RunConfiguration", new XElement("TestCaseFilter", filter)),
            new XElement("xUnit", new XElement("StopOnFail", true), new XElement("MaxParallelThreads", 1))
        ).Save(settings);
        var library = Path.Combine([
            top,
            "tests",
            package.Project,
            "bin",
            "Release",
            "net10.0",
            $"{package.Project}.dll",
        ]);
        var start = new ProcessStartInfo(
            "dotnet",
            ["vstest", library, $"--Settings:{settings}", .. arguments]
        )
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["AIRCOLUMN_FAULT"] = (fault?.Number ?? 0).ToString(CultureInfo.InvariantCulture);
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        using var process = Process.Start(start)!;
        string? failed = null;
        // That it stops at the first is all it says: the run ends without a summary.
        process.OutputDataReceived += (_, line) =>
            failed ??=
                line.Data?.EndsWith("[FAIL]", StringComparison.Ordinal) == true
                    ? line.Data.Split(']')[1].Split(" [")[0].Trim()
                    : null;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(true);
            return (Outcome.Timeout, null);
        }

        process.WaitForExit(); // for what it still has to say
        return (process.ExitCode == 0 ? Outcome.Survived : Outcome.Killed, failed);
    }
}

/// <summary>What becomes of a fault.</summary>
internal enum Outcome
{
    Killed,
    Timeout,
    Survived,
}
