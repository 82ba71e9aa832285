using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Browser.Tests;

/// <summary>What axe-core says of a page.</summary>
internal static class AxePage
{
    // Every rule looks at everything. Of what it passes, one place is described: to describe all takes longer than to look.
    private static readonly AxeRunOptions OneOfEach = new() { ResultTypes = [ResultType.Violations] };

    /// <summary>Asks all its rules: WCAG 2 A and AA, contrast among them, and its best practices.</summary>
    /// <returns>The rules that passed, and all places where one is broken.</returns>
    public static Task<AxeResult> Judged(this IPage page) => page.RunAxe(OneOfEach);
}
