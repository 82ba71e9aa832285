using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Tests;

public class FloorTests
{
    [Fact]
    public void Workshop_stands_on_the_engine_alone()
    {
        var ours = typeof(TubeBuilder)
            .Assembly.GetReferencedAssemblies()
            .Select(assembly => assembly.Name!)
            .Where(name => name.StartsWith("AirColumn", StringComparison.Ordinal));
        Assert.Equal(["AirColumn"], ours);
    }
}
