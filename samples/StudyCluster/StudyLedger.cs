using Shared.Studies;

namespace StudyCluster;

/// <summary>
/// Keeps nothing that the folder does not: where its silo dies, the next one reads there which parts are whole. A part that is then claimed
/// twice is computed twice, and makes the same bytes.
/// </summary>
internal sealed class StudyLedger(StudyJob job, ISiloStatusOracle silos) : Grain, IStudyLedger
{
    private readonly SortedSet<long> free = [];
    private readonly Dictionary<long, SiloAddress> claimed = [];
    private readonly HashSet<SiloAddress> working = [];
    private long parts;

    public override Task OnActivateAsync(CancellationToken cancellationToken)
    {
        parts = StudyRun.PartCount(job.Study, job.PartSize);
        free.UnionWith(job.Run().Left(resumes: true, isAlone: false).ToDo);
        return Task.CompletedTask;
    }

    public Task<long?> Claim(SiloAddress silo)
    {
        FreeWhatTheDeadHad();
        if (free.Count == 0)
        {
            return Task.FromResult<long?>(null);
        }

        var part = free.Min;
        free.Remove(part);
        claimed[part] = silo;
        working.Add(silo);
        return Task.FromResult<long?>(part);
    }

    public Task Keep(long part)
    {
        claimed.Remove(part);
        free.Remove(part);
        return Task.CompletedTask;
    }

    public Task GiveBack(long part)
    {
        if (claimed.Remove(part))
        {
            free.Add(part);
        }

        return Task.CompletedTask;
    }

    public Task<StudyState> State()
    {
        FreeWhatTheDeadHad();
        return Task.FromResult(new StudyState(parts, parts - free.Count - claimed.Count, working.Count));
    }

    private void FreeWhatTheDeadHad()
    {
        foreach (var (part, silo) in claimed.ToList())
        {
            if (IsDead(silo))
            {
                claimed.Remove(part);
                free.Add(part);
            }
        }

        working.RemoveWhere(IsDead);
    }

    private bool IsDead(SiloAddress silo) =>
        silos.GetApproximateSiloStatus(silo) is SiloStatus.Dead or SiloStatus.None;
}
