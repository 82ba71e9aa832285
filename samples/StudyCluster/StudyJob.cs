using AirColumn.Studies;
using Shared.Studies;

namespace StudyCluster;

/// <summary>What a silo computes: a study, into a folder that all silos see, and by how many threads.</summary>
internal sealed record StudyJob(Study Study, string Folder, int PartSize, int Threads)
{
    /// <summary>All of the study.</summary>
    public StudyRun Run() => new(PartFolder.Begin(Folder, Study), Shard.Whole, PartSize);
}
