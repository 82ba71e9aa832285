using System.Globalization;
using AirColumn.Benchmarks;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;

// Without arguments: everything once, in some minutes, and docs/performance.md from it. With "questions" and ColumnTool compiled ahead: what many
// questions to one process cost. With "study", a study document and a number of threads: what a study costs beside what it asks. With any others: as the benchmark runner takes them.
if (args is ["questions", var program])
{
    Console.WriteLine(ManyQuestions.Told(Path.GetFullPath(program)));
    return;
}

if (args is ["study", var study, var threads])
{
    Console.WriteLine(StudyRate.Told(study, int.Parse(threads, CultureInfo.InvariantCulture)));
    return;
}

if (args.Length > 0)
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
    return;
}

var config = ManualConfig
    .Create(DefaultConfig.Instance)
    .AddJob(Job.Default.WithWarmupCount(5).WithIterationCount(9))
    .WithOptions(ConfigOptions.JoinSummary);
var summary = BenchmarkRunner.Run(typeof(Program).Assembly, config)[0];
PerformancePage.Write(summary);
