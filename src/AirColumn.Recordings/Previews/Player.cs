namespace AirColumn.Recordings.Previews;

/// <summary>Looks for lips and breath that make a note speak, and plays it.</summary>
internal sealed class Player
{
    // Choices. A pressure of medium loudness, and how far above the threshold a note is blown at least.
    private const double MediumPascal = 1000;
    private const double LeastOverThreshold = 2;

    // How many times the threshold of the slackest lips the pressure is to be, tried in this order; then lips of the lowest threshold.
    private static readonly double[] Reserves = [3, 2];

    // What the pressure is raised by, where it is free, if the note does not speak.
    private static readonly double[] Raises = [1, 1.5, 2.25];

    // Steady: what a listener and a tuner take for one note.
    private const double MostDriftCents = 0.1;
    private const double MostJitter = 2e-3; // periods
    private const double MostGrowth = 0.02;
    private const double LeastSwing = 0.03; // of the pressure in the mouth; below it counts as silent

    private readonly PreviewOptions options;
    private readonly ResonanceList resonances;
    private readonly List<LipThreshold> thresholds;
    private readonly LipSimulation simulation;
    private readonly Breath breath;
    private readonly CancellationToken cancellationToken;

    public Player(Column column, PreviewOptions options, CancellationToken cancellationToken = default)
    {
        (this.options, this.cancellationToken) = (options, cancellationToken);
        resonances = column.FirstResonances(Math.Max(6, options.Register + 2), cancellationToken);
        if (resonances.Count < options.Register)
        {
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.Register,
                $"options ask for register {options.Register}; this column has {resonances.Count} resonances that can be computed. "
                    + "Ask for one of those."
            );
        }

        var density = column.Air.Density.KilogramsPerCubicMeter;
        var lips = options.Lips.Constants;
        thresholds = LipThreshold.Of(column, Wanted.Frequency.Hertz, density, lips, cancellationToken);
        // Of a wide tube some lie where the band fades already; the note's own is to be right all the same.
        var whole = new BandLimit(column, options.SampleRate).WholeUpTo(double.PositiveInfinity);
        Reflection = ReflectionFunction.Of(
            column,
            options.SampleRate,
            [
                .. resonances
                    .Select(r => r.Frequency.Hertz)
                    .Where((f, i) => f <= whole || i < options.Register),
            ],
            cancellationToken
        );
        simulation = new(Reflection, column.CharacteristicImpedance, density, lips);
        breath = new((int)Math.Round(options.Duration.Seconds * options.SampleRate), options.SampleRate);
    }

    /// <summary>What the column reflects.</summary>
    public ReflectionFunction Reflection { get; }

    /// <summary>The breath of the note.</summary>
    public Breath Breath => breath;

    /// <summary>What to know of the column's resonances.</summary>
    public IReadOnlyList<string> Warnings => resonances.Warnings;

    private Resonance Wanted => resonances[options.Register - 1];

    private double LowestThreshold => thresholds.Count > 0 ? thresholds.Min(t => t.Pascal) : 0;

    /// <summary>The first attempt that speaks, or the last that did not.</summary>
    public Performance Play()
    {
        Performance? last = null;
        foreach (var (pascal, lipHertz) in Attempts())
        {
            last = Attempt(pascal, lipHertz);
            if (last.Status == PreviewStatus.Speaks)
            {
                return last;
            }
        }

        return last
            ?? new Performance
            {
                Status = PreviewStatus.Silent,
                Remark =
                    thresholds.Count == 0
                        ? Remarks.NoLips(options.Register, Wanted.Frequency.Hertz)
                        : Remarks.BeyondBreath(options.Register, LowestThreshold),
                Register = options.Register,
                Resonance = Wanted,
                Pascal = Medium,
                ThresholdPascal = LowestThreshold,
            };
    }

    private double Medium =>
        options.BlowingPressure?.Pascals
        ?? Math.Min(
            Math.Max(MediumPascal, LeastOverThreshold * LowestThreshold),
            PreviewOptions.HighestPascal
        );

    // None where no lips make the note begin, or none with a breath that players have.
    private IEnumerable<(double Pascal, double LipHertz)> Attempts()
    {
        double[] pressures = options.BlowingPressure is null
            ? [.. Raises.Select(raise => Math.Min(raise * Medium, PreviewOptions.HighestPascal))]
            : [Medium];
        return pressures
            .SelectMany(pascal => LipFrequencies(pascal).Select(lipHertz => (pascal, lipHertz)))
            .Distinct();
    }

    private double[] LipFrequencies(double pascal)
    {
        if (options.LipFrequency is { } given)
        {
            return [given.Hertz];
        }

        return thresholds.Count == 0 || LowestThreshold > PreviewOptions.HighestPascal
            ? []
            :
            [
                .. Reserves.Select(reserve => LipThreshold.Slackest(thresholds, pascal / reserve).LipHertz),
                LipThreshold.Slackest(thresholds, 0).LipHertz,
            ];
    }

    private Performance Attempt(double pascal, double lipHertz)
    {
        // From lips pressed together, as a player tongues a note: it is soon there.
        var motion = simulation.Blow(breath.Of(pascal), lipHertz, 0, cancellationToken);
        var (start, length) = breath.Steady.GetOffsetAndLength(breath.Samples);
        var note = SteadyNote.Of(
            motion.Opening.AsSpan(start, length),
            motion.Pressure.AsSpan(start, length),
            options.SampleRate
        );
        var silent = note.Hertz <= 0 || note.Pressure < LeastSwing * pascal;
        var register = silent ? options.Register : Nearest(note.Hertz);
        var status =
            silent ? PreviewStatus.Silent
            : !IsSteady(note) ? PreviewStatus.Unsteady
            : register != options.Register ? PreviewStatus.OtherRegister
            : PreviewStatus.Speaks;
        var heard = silent ? 0 : note.Hertz;
        return new Performance
        {
            Status = status,
            Remark = Remark(status, heard, register, pascal, lipHertz),
            Hertz = heard,
            Register = register,
            Resonance = resonances[register - 1],
            Pascal = pascal,
            LipHertz = lipHertz,
            ThresholdPascal = LowestThreshold,
            Steady = breath.Steady,
            Motion = motion,
        };
    }

    private static bool IsSteady(SteadyNote note) =>
        Math.Abs(note.DriftCents) <= MostDriftCents
        && note.Jitter <= MostJitter
        && Math.Abs(note.Growth - 1) <= MostGrowth;

    private int Nearest(double hertz) =>
        1 + Enumerable.Range(0, resonances.Count).MinBy(i => Math.Abs(Cents(hertz, i + 1)));

    private string Remark(PreviewStatus status, double hertz, int register, double pascal, double lipHertz)
    {
        var blown = new Remarks.Blown(options.Register, pascal, lipHertz);
        return status switch
        {
            PreviewStatus.Speaks => Remarks.Speaks(blown, hertz, Cents(hertz, register)),
            PreviewStatus.Silent => Remarks.Silent(blown, LowestThreshold),
            PreviewStatus.OtherRegister => Remarks.OtherRegister(blown, register, hertz),
            _ => Remarks.Unsteady(blown),
        };
    }

    private double Cents(double hertz, int register) =>
        1200 * Math.Log2(hertz / resonances[register - 1].Frequency.Hertz);
}
