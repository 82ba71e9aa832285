using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Browser.Tests;

/// <summary>What axe-core says of a page by all its rules: WCAG 2 A and AA, contrast among them, and its best practices.</summary>
/// <param name="Passed">The rules that looked at something and found nothing.</param>
/// <param name="Broken">Each place where a rule is broken: the rule, then what is there.</param>
internal sealed record AxePage(IReadOnlyList<string> Passed, IReadOnlyList<string> Broken)
{
    // Only what is broken is described place by place: to describe what passed takes longer than to look.
    private const string Run = """
        async () => {
          const result = await axe.run(document, { resultTypes: ['violations'] });
          return {
            passed: result.passes.map((rule) => rule.id),
            broken: result.violations.flatMap((rule) => rule.nodes.map((node) => `${rule.id}: ${node.html}`)),
          };
        }
        """;

    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    public static async Task<AxePage> Of(IPage page)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(Script);
        }

        var found = await page.EvaluateAsync<Found>(Run);
        return new AxePage(found.Passed, found.Broken);
    }

    // Playwright fills in what it reads.
    private sealed class Found
    {
        public string[] Passed { get; set; } = [];

        public string[] Broken { get; set; } = [];
    }
}
