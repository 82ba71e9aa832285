using AirColumn.Studies;

namespace AirColumn.Tests.Studies;

public class StudySharesTests
{
    // The test function of ishigami1990, sin x1 + 7 sin² x2 + 0.1 x3⁴ sin x1 over (−π, π): its shares in closed form, from memory
    // V1 = (1 + bπ⁴/5)²/2, V2 = a²/8, V3 = 0, V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2.
    [Theory]
    [InlineData(1024, 0.03)]
    [InlineData(16384, 0.01)]
    public void Shares_of_a_published_function(int count, double within)
    {
        const double A = 7;
        const double B = 0.1;
        var points = new StudyPoints(StudyPointKind.Sobol, count, 1);
        var x = Enumerable
            .Range(0, 3)
            .Select(d =>
                Enumerable.Range(0, count).Select(i => Math.PI * (2 * points.At(i, d) - 1)).ToArray()
            )
            .ToArray();
        var y = Enumerable
            .Range(0, count)
            .Select(i =>
                Math.Sin(x[0][i]) * (1 + B * Math.Pow(x[2][i], 4)) + A * Math.Pow(Math.Sin(x[1][i]), 2)
            )
            .ToArray();
        var fourth = B * Math.Pow(Math.PI, 4) / 5;
        var total = A * A / 8 + fourth + B * B * Math.Pow(Math.PI, 8) / 18 + 0.5;
        Assert.Equal(0.5 * Math.Pow(1 + fourth, 2) / total, StudyShares.FirstOrder(x[0], y), within);
        Assert.Equal(A * A / 8 / total, StudyShares.FirstOrder(x[1], y), within);
        Assert.Equal(0, StudyShares.FirstOrder(x[2], y), within);
    }

    // A whole grid: answer = 2a + b of a in 40 and b in 25 equal steps, shares as of the variances of both.
    [Fact]
    public void Shares_of_a_grid_are_exact()
    {
        double[] a = [.. Enumerable.Range(0, 1000).Select(i => (double)(i % 40))];
        double[] b = [.. Enumerable.Range(0, 1000).Select(i => (double)(i / 40))];
        double[] answer = [.. a.Zip(b, (x, y) => 2 * x + y)];
        // Of n equal steps the variance is (n² − 1)/12.
        var (ofA, ofB) = (4 * (40 * 40 - 1) / 12.0, (25 * 25 - 1) / 12.0);
        Assert.Equal(ofA / (ofA + ofB), StudyShares.FirstOrder(a, answer), 1e-12);
        Assert.Equal(ofB / (ofA + ofB), StudyShares.FirstOrder(b, answer), 1e-12);
    }

    [Fact]
    public void Steps_are_groups_and_what_is_missing_is_left_out()
    {
        double[] parameter = [.. Enumerable.Range(0, 90).Select(i => (double)(i % 3)), 5, double.NaN];
        double[] answer = [.. parameter.Take(90).Select(p => p * p), double.NaN, 7];
        Assert.Equal(1, StudyShares.FirstOrder(parameter, answer), 1e-12);
        Assert.Equal(double.NaN, StudyShares.FirstOrder(parameter, new double[92]));
        Assert.Equal(double.NaN, StudyShares.FirstOrder(parameter.AsSpan(0, 31), answer.AsSpan(0, 31)));
        Assert.Throws<ArgumentException>(() => StudyShares.FirstOrder(parameter, answer.AsSpan(0, 31)));
    }
}
