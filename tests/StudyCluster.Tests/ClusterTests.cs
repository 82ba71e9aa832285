using AirColumn.Studies;
using Orleans.Configuration;
using Orleans.TestingHost;
using Shared.Studies;

namespace StudyCluster.Tests;

/// <summary>Silos of Orleans' test host: one is killed while it computes, another joins, and the result is the same.</summary>
public sealed class ClusterTests : IDisposable
{
    private const int PartSize = 10;

    private const string Text = """
        {
          "study": 1,
          "column": {
            "column": 2, "wavefronts": "plane",
            "sections": [{ "shape": "cylinder", "diameter": "40 mm", "length": "500 mm" }],
            "farEnd": { "kind": "open" }
          },
          "parameters": [{ "parameter": "length of section 1", "uniform": { "from": "300 mm", "to": "900 mm" } }],
          "points": { "by": "sobol", "count": 1600 },
          "answers": { "resonances": 6, "gradients": true }
        }
        """;

    private static readonly Study Study = Study.Parse(Text);

    // The test host makes what configures a silo by itself.
    private static StudyJob job = null!;

    private readonly string folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task A_silo_that_is_killed_and_one_that_joins_leave_the_same_bytes()
    {
        job = new StudyJob(Study, folder, PartSize, 1);
        var builder = new TestClusterBuilder(2);
        builder.AddSiloBuilderConfigurator<Configurator>();
        await using var cluster = builder.Build();
        await cluster.DeployAsync();
        var ledger = cluster.GrainFactory.GetGrain<IStudyLedger>(Study.Sha256());
        await Until(state => state.Kept >= 20 && state.Silos == 2);

        var before = await ledger.State();
        await cluster.KillSiloAsync(cluster.SecondarySilos[0]);
        await cluster.StartAdditionalSiloAsync();
        Assert.False(before.IsComplete, "It was complete before anything was killed.");
        await Until(state => state.Silos == 2 || state.IsComplete);
        await Until(state => state.IsComplete);

        using var merged = new MemoryStream();
        new StudyMerge([folder]).Write(merged, RowFormat.Csv);
        using var expected = new MemoryStream();
        RowFormat.Csv.Write(expected, Study, Rows());
        Assert.Equal(expected.ToArray(), merged.ToArray());

        // Grains of a silo that dies answer with an exception until others have noticed.
        async Task Until(Func<StudyState, bool> isSo)
        {
            for (var end = DateTime.UtcNow.AddSeconds(60); DateTime.UtcNow < end; await Task.Delay(50))
            {
                try
                {
                    if (isSo(await ledger.State()))
                    {
                        return;
                    }
                }
                catch (Exception problem) when (problem is OrleansException or TimeoutException)
                {
                    continue;
                }
            }

            Assert.Fail("It took longer than a minute.");
        }
    }

    private static IEnumerable<StudyRow> Rows()
    {
        for (var item = 0L; item < Study.Count; item++)
        {
            yield return Study.Answer(item);
        }
    }

    private sealed class Configurator : ISiloConfigurator
    {
        public void Configure(ISiloBuilder siloBuilder) =>
            siloBuilder
                .AddStudy(job)
                .Configure<ClusterMembershipOptions>(options =>
                {
                    options.ProbeTimeout = TimeSpan.FromMilliseconds(500);
                    options.NumMissedProbesLimit = 2;
                    options.NumVotesForDeathDeclaration = 1;
                });
    }
}
