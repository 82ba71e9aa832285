namespace AirColumn.Recordings.Tests;

public class FloorTests
{
    [Fact]
    public void Recordings_stand_on_the_engine_alone()
    {
        var ours = typeof(Take)
            .Assembly.GetReferencedAssemblies()
            .Select(assembly => assembly.Name!)
            .Where(name => name.StartsWith("AirColumn", StringComparison.Ordinal));
        Assert.Equal(["AirColumn"], ours);
    }
}
