using BenchPage.Engine;

namespace BenchPage.Tubes;

/// <summary>What the bench was before: changes of one thing in a row, as a slider makes them, are one step.</summary>
internal sealed class History
{
    private const int Most = 200;

    private readonly List<BenchState> before = [];
    private readonly List<BenchState> after = [];
    private string last = "";

    public bool CanUndo => before.Count > 0;

    public bool CanRedo => after.Count > 0;

    /// <summary>Notes a change.</summary>
    /// <param name="from">What the bench was.</param>
    /// <param name="what">What is changed; changes of the same in a row are undone together. Empty stands alone.</param>
    public void Add(BenchState from, string what)
    {
        after.Clear();
        if (what.Length == 0 || what != last)
        {
            before.Add(from);
            if (before.Count > Most)
            {
                before.RemoveAt(0);
            }
        }

        last = what;
    }

    public BenchState Undo(BenchState now) => Step(now, before, after);

    public BenchState Redo(BenchState now) => Step(now, after, before);

    private BenchState Step(BenchState now, List<BenchState> from, List<BenchState> to)
    {
        var then = from[^1];
        from.RemoveAt(from.Count - 1);
        to.Add(now);
        last = "";
        return then;
    }
}
