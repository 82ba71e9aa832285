using System.Globalization;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// The air along a bore from the blown end: warm breath at the mouth, room air at the far end. Immutable, equal
/// by value.
/// </summary>
/// <remarks>
/// Between two states the temperature, the pressure, the carbon dioxide and the mole fraction of water vapour change in
/// proportion, as they do when air is mixed; vapour that the air cannot hold condenses. Stretches over which the speed
/// of sound changes by more than 0.05 % are computed in parts, each filled with the air of its middle.
/// </remarks>
public abstract class AirProfile : IEquatable<AirProfile>
{
    // A part has to be short against the wavelength as well; parts like this keep the sixth resonance within 0.01 cent.
    private const double LargestChange = 5e-4;

    private protected AirProfile() { }

    /// <summary>One air throughout.</summary>
    /// <param name="air">The air, from a state or from given constants.</param>
    /// <returns>The profile.</returns>
    public static AirProfile Uniform(Air air)
    {
        ArgumentNullException.ThrowIfNull(air);
        return new UniformAir(air);
    }

    /// <summary>Air that changes linearly from the blown end to the far end, or over a given length and then no more.</summary>
    /// <param name="from">The air at the blown end.</param>
    /// <param name="to">The air where the change ends.</param>
    /// <param name="over">Distance from the blown end at which the change ends, 1 µm to 1 km. Default: the length of the bore.</param>
    /// <returns>The profile.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range or not a number.</exception>
    public static AirProfile Linear(AirState from, AirState to, Length? over = null)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        return new LinearAir(from, to, over is { } length ? Reach(length, nameof(over)) : null);
    }

    /// <summary>Air that approaches the air of the room exponentially with the distance, as breath cools in a tube.</summary>
    /// <param name="from">The air at the blown end.</param>
    /// <param name="towards">The air that the profile approaches.</param>
    /// <param name="decay">Distance over which the difference from that air falls to 1/e, 1 µm to 1 km.</param>
    /// <returns>The profile.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range or not a number.</exception>
    public static AirProfile Exponential(AirState from, AirState towards, Length decay)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(towards);
        return new ExponentialAir(from, towards, Reach(decay, nameof(decay)));
    }

    /// <summary>Air measured at several places, interpolated linearly between them and constant beyond the first and the last.</summary>
    /// <param name="points">At least two, at increasing distances from the blown end, 0 to 1 km.</param>
    /// <returns>The profile.</returns>
    /// <exception cref="ArgumentException">There are fewer than two points, or distances do not increase.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A distance is out of range or not a number.</exception>
    public static AirProfile Tabulated(params IReadOnlyList<AirProfilePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2)
        {
            throw new ArgumentException(
                $"An air profile has {points.Count} points; it needs at least 2. For one air throughout use AirProfile.Uniform.",
                nameof(points)
            );
        }

        for (var i = 0; i < points.Count; i++)
        {
            ArgumentNullException.ThrowIfNull(points[i].State, nameof(points));
            Require.InRange(points[i].Distance.Millimeters, 0, 1e6, "mm", nameof(points));
            if (i > 0 && !(points[i].Distance > points[i - 1].Distance))
            {
                throw new ArgumentException(
                    $"Air profile point {i + 1} is at {Require.Show(points[i].Distance.Millimeters, "mm")}, point {i} at "
                        + $"{Require.Show(points[i - 1].Distance.Millimeters, "mm")}; distances must increase.",
                    nameof(points)
                );
            }
        }

        return new TabulatedAir([.. points.Select(point => (point.Distance.Meters, point.State))]);
    }

    /// <summary>One air throughout.</summary>
    /// <param name="air">The air.</param>
    public static implicit operator AirProfile(Air air) => Uniform(air);

    /// <summary>One air throughout.</summary>
    /// <param name="air">The air.</param>
    /// <returns>The profile.</returns>
    public static AirProfile FromAir(Air air) => Uniform(air);

    /// <summary>Whether one air fills all.</summary>
    internal virtual bool IsUniform => false;

    /// <summary>Whether temperature and humidity are known, not the constants of the gas only.</summary>
    internal virtual bool HasState => true;

    /// <summary>The air at a place.</summary>
    /// <param name="distance">Distance from the blown end; below 0 counts as 0.</param>
    /// <param name="boreLength">Length of the bore, greater than 0.</param>
    /// <returns>The air there.</returns>
    public Air At(Length distance, Length boreLength) =>
        At(
            Math.Max(
                0,
                Require.InRange(distance.Meters, double.MinValue, double.MaxValue, "m", nameof(distance))
            ),
            Require.Positive(boreLength.Meters, "m", nameof(boreLength))
        );

    /// <inheritdoc/>
    public abstract bool Equals(AirProfile? other);

    /// <inheritdoc/>
    public sealed override bool Equals(object? obj) => Equals(obj as AirProfile);

    /// <inheritdoc/>
    public abstract override int GetHashCode();

    /// <summary>The air at a place, m, of a bore of a length, m.</summary>
    internal abstract Air At(double metres, double boreLength);

    /// <summary>This profile with each of its states changed.</summary>
    /// <exception cref="InvalidOperationException">It is of air given by constants, which has no state.</exception>
    internal abstract AirProfile With(Func<AirState, AirState> change);

    /// <summary>
    /// Places, m, in a bore of a length at which it is divided so that the air of each part is nearly one; without both ends.
    /// </summary>
    internal abstract IEnumerable<double> Divisions(double boreLength);

    /// <summary>The airs of the parts of a bore of a length, m, from the blown end.</summary>
    internal IEnumerable<Air> Fillings(double boreLength)
    {
        var start = 0.0;
        foreach (var end in Divisions(boreLength).Append(boreLength))
        {
            yield return At((start + end) / 2, boreLength);
            start = end;
        }
    }

    // How many parts for a stretch between two airs.
    private static int Parts(Air a, Air b) =>
        Math.Max(
            1,
            (int)
                Math.Ceiling(
                    Math.Abs(Math.Log(b.Constants.SpeedOfSound / a.Constants.SpeedOfSound)) / LargestChange
                )
        );

    private static double Reach(Length length, string parameter)
    {
        Require.InRange(length.Millimeters, 1e-3, 1e6, "mm", parameter);
        return length.Meters;
    }

    // A share of 0 is the first state.
    private static Air Between(AirState a, AirState b, double share)
    {
        if (share <= 0 || a == b)
        {
            return Air.At(a);
        }

        if (share >= 1)
        {
            return Air.At(b);
        }

        var celsius = Mix(a.Temperature.DegreesCelsius, b.Temperature.DegreesCelsius);
        var pressure = Mix(a.Pressure.Pascals, b.Pressure.Pascals);
        var vapour = Mix(a.WaterVapour, b.WaterVapour);
        var saturated = WaterVapour.MoleFraction(celsius, 1, pressure);
        return Air.At(
            new AirState(
                Temperature.FromDegreesCelsius(celsius),
                RelativeHumidity.FromPercent(Math.Min(100, 100 * vapour / saturated)),
                Pressure.FromPascals(pressure),
                Ratio.FromDecimalFractions(
                    Mix(a.CarbonDioxide.DecimalFractions, b.CarbonDioxide.DecimalFractions)
                )
            )
        );

        double Mix(double one, double other) => one + share * (other - one);
    }

    internal sealed class UniformAir(Air air) : AirProfile
    {
        public Air Air { get; } = air;

        public override bool Equals(AirProfile? other) =>
            other is UniformAir uniform && Air.Equals(uniform.Air);

        public override int GetHashCode() => Air.GetHashCode();

        public override string ToString() => Air.ToString();

        internal override bool IsUniform => true;

        internal override bool HasState => Air.State is not null;

        internal override Air At(double metres, double boreLength) => Air;

        internal override AirProfile With(Func<AirState, AirState> change) =>
            new UniformAir(Air.With(change));

        internal override IEnumerable<double> Divisions(double boreLength) => [];
    }

    internal sealed class LinearAir(AirState from, AirState to, double? over) : AirProfile
    {
        private readonly (AirState From, AirState To, double? Over) value = (from, to, over);

        public AirState From => value.From;

        public AirState To => value.To;

        /// <summary>Where the change ends, m; null at the end of the bore.</summary>
        public double? Over => value.Over;

        public override bool Equals(AirProfile? other) => other is LinearAir linear && value == linear.value;

        public override int GetHashCode() => value.GetHashCode();

        public override string ToString() => $"from {value.From} steadily to {value.To}";

        internal override AirProfile With(Func<AirState, AirState> change) =>
            new LinearAir(change(value.From), change(value.To), value.Over);

        internal override Air At(double metres, double boreLength) =>
            Between(value.From, value.To, metres / (value.Over ?? boreLength));

        internal override IEnumerable<double> Divisions(double boreLength)
        {
            var reach = value.Over ?? boreLength;
            var parts = Parts(Air.At(value.From), Air.At(value.To));
            return Enumerable.Range(1, parts).Select(i => reach * i / parts).Where(x => x < boreLength);
        }
    }

    internal sealed class ExponentialAir(AirState from, AirState towards, double decay) : AirProfile
    {
        private readonly (AirState From, AirState Towards, double Decay) value = (from, towards, decay);

        public AirState From => value.From;

        public AirState Towards => value.Towards;

        /// <summary>Over what the difference falls to 1/e, m.</summary>
        public double Decay => value.Decay;

        public override bool Equals(AirProfile? other) =>
            other is ExponentialAir exponential && value == exponential.value;

        public override int GetHashCode() => value.GetHashCode();

        public override string ToString() =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"from {value.From} towards {value.Towards}, 1/e in {Math.Round(1000 * value.Decay, 6)} mm"
            );

        internal override AirProfile With(Func<AirState, AirState> change) =>
            new ExponentialAir(change(value.From), change(value.Towards), value.Decay);

        internal override Air At(double metres, double boreLength) =>
            Between(value.From, value.Towards, -double.ExpM1(-metres / value.Decay));

        internal override IEnumerable<double> Divisions(double boreLength)
        {
            // Equal steps of the share that is left, but never a large part of the decay: the middle of a slice stands for
            // its mean. Below the last share nothing is left to follow.
            const double Last = 1e-4;
            var step = 1.0 / Parts(Air.At(value.From), Air.At(value.Towards));
            for (var share = 1.0; share > Last; )
            {
                share = Math.Max(share - step, share * Math.Exp(-1.0 / 8));
                var x = -value.Decay * Math.Log(share);
                if (x >= boreLength)
                {
                    break;
                }

                yield return x;
            }
        }
    }

    internal sealed class TabulatedAir((double Metres, AirState State)[] points) : AirProfile
    {
        private readonly (double Metres, AirState State)[] points = points;

        public IReadOnlyList<(double Metres, AirState State)> Points => points;

        public override bool Equals(AirProfile? other) =>
            other is TabulatedAir table && points.AsSpan().SequenceEqual(table.points);

        public override int GetHashCode() => HashCode.Combine(points.Length, points[0], points[^1]);

        public override string ToString() =>
            $"from {points[0].State} to {points[^1].State} by {points.Length} points";

        internal override AirProfile With(Func<AirState, AirState> change) =>
            new TabulatedAir([.. points.Select(point => point with { State = change(point.State) })]);

        internal override Air At(double metres, double boreLength)
        {
            // The first inner point that is not before the place, by halves: a table may be long.
            var (low, high) = (1, points.Length - 1);
            while (low < high)
            {
                var middle = (low + high) / 2;
                (low, high) = metres > points[middle].Metres ? (middle + 1, high) : (low, middle);
            }

            var (start, end) = (points[low - 1], points[low]);
            return Between(start.State, end.State, (metres - start.Metres) / (end.Metres - start.Metres));
        }

        internal override IEnumerable<double> Divisions(double boreLength)
        {
            for (var i = 1; i < points.Length; i++)
            {
                var (start, end) = (points[i - 1].Metres, points[i].Metres);
                var parts = Parts(Air.At(points[i - 1].State), Air.At(points[i].State));
                for (var part = i == 1 && start > 0 ? 0 : 1; part <= parts; part++)
                {
                    var x = start + (end - start) * part / parts;
                    if (x < boreLength)
                    {
                        yield return x;
                    }
                }
            }
        }
    }
}
