using Xunit.Abstractions;

[assembly: TestCollectionOrderer("Browser.Tests.Bench.BenchFirst", "Browser.Tests")]

namespace Browser.Tests.Bench;

/// <summary>Begins with the tests of the bench, which take longest, so that the others run beside them.</summary>
public sealed class BenchFirst : ITestCollectionOrderer
{
    public IEnumerable<ITestCollection> OrderTestCollections(IEnumerable<ITestCollection> testCollections) =>
        testCollections.OrderBy(collection =>
            collection.DisplayName.StartsWith(BenchTests.Name, StringComparison.Ordinal) ? 0 : 1
        );
}
