namespace AirColumn.Tests;

public class ReferenceTableTests
{
    [Theory]
    [InlineData("bessel-ratio.csv", 65)]
    [InlineData("cylinder-lossy.csv", 128)]
    public void Reads_every_row(string name, int rows) =>
        Assert.Equal(rows, ReferenceTable.Read(name).Rows.Count());
}
