using Microsoft.Extensions.DependencyInjection;
using Orleans.Configuration;

namespace StudyCluster;

/// <summary>What every silo of a study has, whatever keeps the cluster together.</summary>
internal static class Silos
{
    /// <summary>Adds the study and what computes it.</summary>
    public static ISiloBuilder AddStudy(this ISiloBuilder silo, StudyJob job)
    {
        silo.Services.AddSingleton(job);
        silo.Services.AddHostedService<StudyWorker>();
        // A silo that does not answer for some seconds is dead; its parts are computed elsewhere, and if it was not, they are there twice, alike.
        silo.Configure<ClusterMembershipOptions>(options =>
        {
            options.ProbeTimeout = TimeSpan.FromSeconds(2);
            options.NumMissedProbesLimit = 2;
        });
        return silo;
    }
}
