using MathNet.Numerics.Distributions;

namespace AirColumn.Studies;

/// <summary>Which values a parameter takes: some in steps, or those of a distribution. Values are in SI units.</summary>
internal abstract record Spread
{
    /// <summary>How many steps; null where values are drawn.</summary>
    public virtual int? Steps => null;

    /// <summary>The value of a step.</summary>
    public virtual double AtStep(int step) => throw new InvalidOperationException("It has no steps.");

    /// <summary>The value that is not exceeded with a probability above 0 and below 1.</summary>
    public virtual double Quantile(double probability) =>
        throw new InvalidOperationException("It has no distribution.");
}

/// <summary>Values one by one.</summary>
internal sealed record Listed(double[] Values) : Spread
{
    public override int? Steps => Values.Length;

    public override double AtStep(int step) => Values[step];
}

/// <summary>Equal steps from one value to another, both of them included.</summary>
internal sealed record Stepped(double From, double To, int Count) : Spread
{
    public override int? Steps => Count;

    public override double AtStep(int step) =>
        step == Count - 1 ? To : From + (To - From) * step / (Count - 1);
}

/// <summary>Every value between two as likely as any other.</summary>
internal sealed record Uniform(double From, double To) : Spread
{
    public override double Quantile(double probability) => From + (To - From) * probability;
}

/// <summary>A normal distribution.</summary>
internal sealed record Gaussian(double Mean, double Deviation) : Spread
{
    public override double Quantile(double probability) => Normal.InvCDF(Mean, Deviation, probability);
}

/// <summary>A quantity whose logarithm is normally distributed; a standard deviation is a factor or a divisor.</summary>
internal sealed record LogGaussian(double Median, double Factor) : Spread
{
    public override double Quantile(double probability) =>
        Median * Math.Exp(Normal.InvCDF(0, Math.Log(Factor), probability));
}
