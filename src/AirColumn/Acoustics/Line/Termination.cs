using System.Numerics;
using AirColumn.Acoustics.Radiation;
using AirColumn.Acoustics.Vectors;
using UnitsNet;

namespace AirColumn.Acoustics.Line;

/// <summary>The far end compiled: pressure and flow there, up to a common factor, at any angular frequency.</summary>
internal sealed class Termination
{
    private readonly double radius;
    private readonly double speedOfSound;
    private readonly double characteristicImpedance;
    private readonly OpenEndModel? model; // null where the end does not radiate
    private readonly Func<double, EndReflection>? reflection; // of it
    private readonly Func<Frequency, Complex>? given;
    private readonly double highestGiven = double.PositiveInfinity;

    /// <summary>The far end of a bore whose last wall is this.</summary>
    public Termination(BoreEnd end, in Wall wall, GasConstants gas, ColumnOptions options)
        : this(end, wall.Radius, gas, options.Radiation, Radiating(end, wall, options)) { }

    /// <summary>The end of a straight pipe.</summary>
    public Termination(BoreEnd end, double radius, GasConstants gas)
        : this(
            end,
            radius,
            gas,
            RadiationModel.Exact,
            Radiating(end, new Wall(radius, 0, 0), new ColumnOptions())
        ) { }

    private Termination(
        BoreEnd end,
        double radius,
        GasConstants gas,
        RadiationModel model,
        OpenEndModel? radiating
    )
        : this(radiating, radius, gas)
    {
        given = model.Impedance;
        highestGiven = model.HighestHertz;
        HighestFrequency = Math.Min(HighestFrequency, highestGiven);
        IsClosed = given is null && end is ClosedEnd;
    }

    private Termination(OpenEndModel? model, double radius, GasConstants gas)
    {
        this.radius = radius;
        this.model = model;
        reflection = model?.At;
        Warning = model?.Warning;
        speedOfSound = gas.SpeedOfSound;
        characteristicImpedance = gas.Density * gas.SpeedOfSound / (Math.PI * radius * radius);
        HighestFrequency =
            (model?.HighestKa ?? double.PositiveInfinity) * speedOfSound / (2 * Math.PI * radius);
    }

    private Termination(Termination other, GasConstants gas)
        : this(other.model, other.radius, gas)
    {
        (given, highestGiven, IsClosed) = (other.given, other.highestGiven, other.IsClosed);
        HighestFrequency = Math.Min(HighestFrequency, highestGiven);
    }

    /// <summary>Whether it is a model of ours, smooth in frequency, rather than a function that was given.</summary>
    public bool IsSmooth => given is null;

    /// <summary>Frequencies, Hz, where a model of ours has a corner: a table begins or a course is held.</summary>
    public IEnumerable<double> Corners =>
        model is null
            ? []
            : new[] { TaperedMouth.HighestKa, model.CornerKa }
                .Where(double.IsFinite)
                .Select(ka => ka * speedOfSound / (2 * Math.PI * radius));

    /// <summary>Whether the end is a rigid stop.</summary>
    public bool IsClosed { get; }

    /// <summary>Where the radiation model ends, Hz; infinite for ends that do not radiate.</summary>
    public double HighestFrequency { get; }

    /// <summary>What the user should know of the model at this end; null if nothing.</summary>
    public string? Warning { get; }

    /// <summary>The open end of a hole of one radius through the wall of a tube of another outer radius, m.</summary>
    public static Termination OfHole(double radius, double outerRadius, GasConstants gas) =>
        new(new HoleEnd(radius / outerRadius).Model, radius, gas);

    /// <summary>The same end in another gas.</summary>
    public Termination In(GasConstants gas) => new(this, gas);

    /// <summary>Whether another differs in its gas alone.</summary>
    public bool DiffersInGasFrom(Termination other) =>
        ReferenceEquals(model, other.model)
        && ReferenceEquals(given, other.given)
        && radius.Equals(other.radius);

    /// <summary>ρc/S and c.</summary>
    public (double Impedance, double SpeedOfSound) Scales => (characteristicImpedance, speedOfSound);

    /// <summary>
    /// What the pressure at some ω changes by with relative changes of ρc/S and of c, the shape of the end staying: Pa for U = 1. It
    /// depends on c as on 1/ω.
    /// </summary>
    public (ComplexVector WithImpedance, ComplexVector WithSpeed) GasSlopes(RealVector omega)
    {
        if (reflection is null || given is not null)
        {
            return (ComplexVector.Zero, ComplexVector.Zero);
        }

        const double Step = 1e-3;
        return (
            Pressure(0),
            (-1 / (12 * Step))
                * (8 * (Pressure(Step) - Pressure(-Step)) - (Pressure(2 * Step) - Pressure(-2 * Step)))
        );

        ComplexVector Pressure(double step) => At((1 + step) * omega).Pressure;
    }

    /// <summary>The same as <see cref="At(double)"/> at some angular frequencies.</summary>
    public (ComplexVector Pressure, ComplexVector Flow) At(RealVector omega)
    {
        if (IsClosed)
        {
            return (ComplexVector.One, ComplexVector.Zero);
        }

        var pressure =
            given is not null ? GivenImpedances(omega)
            : model is null ? ComplexVector.Zero
            : characteristicImpedance * model.RelativeImpedanceAt(radius / speedOfSound * omega);
        return (pressure, ComplexVector.One);
    }

    /// <summary>(p, U) at the end at ω: Pa and m³/s up to a common factor, U = 1 but at a rigid stop.</summary>
    public (Complex Pressure, Complex Flow) At(double omega)
    {
        if (IsClosed)
        {
            return (1, 0);
        }

        if (given is not null)
        {
            return (GivenImpedance(omega), 1);
        }

        var ka = omega * radius / speedOfSound;
        return (reflection is null ? 0 : characteristicImpedance * reflection(ka).RelativeImpedance(ka), 1);
    }

    /// <summary>p⁻/p⁺ at some angular frequencies.</summary>
    public ComplexVector ReflectionAt(RealVector omega)
    {
        if (IsClosed || (given is null && reflection is null))
        {
            return ComplexVector.All(IsClosed ? 1 : -1);
        }

        if (given is null)
        {
            return model!.ReflectionAt(radius / speedOfSound * omega);
        }

        var z = (1 / characteristicImpedance) * GivenImpedances(omega);
        return (z - RealVector.One) / (1.0 + z);
    }

    /// <summary>See <see cref="LosslessReactance(double)"/>, at some angular frequencies.</summary>
    public RealVector LosslessReactance(RealVector omega)
    {
        if (given is not null || reflection is null)
        {
            return LosslessReactances(omega);
        }

        // tan of half the phase of −R.
        var r = ReflectionAt(omega);
        return characteristicImpedance * r.Im / (Vector.SquareRoot(r.Norm) - r.Re);
    }

    private RealVector LosslessReactances(RealVector omega) =>
        RealVectors.Each(i => LosslessReactance(omega[i]));

    /// <summary>The reactance the end would have if it reflected everything, Pa·s/m³; open ends only.</summary>
    public double LosslessReactance(double omega)
    {
        if (given is not null)
        {
            // R = (Z − Zc)/(Z + Zc) turned to modulus 1: j·tan of half the phase of −R.
            var z = GivenImpedance(omega) / characteristicImpedance;
            return characteristicImpedance * Math.Tan(((1 - z) / (1 + z)).Phase / -2);
        }

        var ka = omega * radius / speedOfSound;
        return reflection is null ? 0 : characteristicImpedance * Math.Tan(ka * reflection(ka).EndCorrection);
    }

    private ComplexVector GivenImpedances(RealVector omega) =>
        ComplexVector.Each(i => GivenImpedance(omega[i]));

    private Complex GivenImpedance(double omega)
    {
        var frequency = Frequency.FromHertz(omega / (2 * Math.PI));
        var z = given!(frequency);
        return Complex.IsFinite(z) && z.Real >= -1e-12 * z.Magnitude
            ? z
            : throw new InvalidOperationException(
                $"The impedance given for the far end is {z} Pa·s/m³ at {Require.Show(frequency.Hertz, "Hz")}; it must be finite "
                    + "and its real part not negative. For a rigid stop use a closed end."
            );
    }

    private static OpenEndModel? Radiating(BoreEnd end, in Wall wall, ColumnOptions options) =>
        options.Radiation.Impedance is not null || end is ClosedEnd or IdealOpenEnd
            ? null
            : options.Radiation.Of(end, wall, options.Wavefronts == Wavefronts.Curved);
}
