using System.Numerics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Multimodal;
using AirColumn.Acoustics.Radiation;
using AirColumn.Acoustics.Sensitivity;
using AirColumn.Bores;
using AirColumn.Gases;
using UnitsNet;

namespace AirColumn.Acoustics;

/// <summary>An air column: a bore filled with air, compiled once, that answers at any frequency.</summary>
/// <remarks>
/// <para>
/// Model: one-dimensional waves in a bore of circular cross-section (source: chaigne2016, ch. 7), their fronts as
/// <see cref="ColumnOptions.Wavefronts"/> says, or several radial modes (pagneux1996), wall losses as <see cref="ColumnOptions.Losses"/> says, the air mass at sudden
/// changes of diameter (kergomard1987), radiation as <see cref="ColumnOptions.Radiation"/> says. Holes and branches are small
/// against the wavelength where they join the bore and do not see each other's sound outside; vibration of the wall is not in it.
/// Valid below <see cref="CutOn"/>.
/// </para>
/// <para>Immutable; safe to share between threads.</para>
/// </remarks>
public sealed class Column
{
    // A period of a quarter of an hour: below it nothing is sound, and quotients of rounding begin to matter.
    private const double LowestHertz = 1e-3;
    private const double StillPhase = 0.02; // kL

    private readonly CompiledColumn compiled;
    private readonly Element[] elements; // from the blown end
    private readonly FarEndLoad[] loads; // all that end something
    private readonly double steepest;
    private WaveColumn? waves; // made when a curve is first asked for
    private ModalFamily? modal; // likewise

    /// <summary>Compiles a column.</summary>
    /// <param name="bore">Its shape.</param>
    /// <param name="air">What fills it: one <see cref="Gases.Air"/>, or a profile of how it changes along the bore.</param>
    /// <param name="options">Losses, wave fronts, blown end, tolerance; the defaults if left out.</param>
    /// <exception cref="ArgumentNullException">The bore or the air is null.</exception>
    /// <exception cref="ArgumentException">The fingering is for another number of holes.</exception>
    public Column(Bore bore, AirProfile air, ColumnOptions? options = null)
        : this(
            new ColumnParts(
                bore ?? throw new ArgumentNullException(nameof(bore)),
                air ?? throw new ArgumentNullException(nameof(air)),
                options ?? new ColumnOptions()
            ),
            null
        ) { }

    internal Column(in ColumnParts parts, CompiledColumn? previous)
    {
        (Bore, AirProfile, Options) = parts;
        Air = AirProfile.At(0, Bore.LengthMetres);
        var states = Options.Fingering.ForHoles(Bore.Holes.Count, "options");
        compiled = ColumnCompiler.Compile(parts, previous);
        elements = compiled.Fingered(states);
        var blownRadius = Bore.Sections[0].WallAt(0).Radius;
        CharacteristicImpedance = Gas.Density * Gas.SpeedOfSound / (Math.PI * blownRadius * blownRadius);
        Wavefronts = compiled.Parts.Options.Wavefronts;
        steepest = Wavefronts is Wavefronts.Curved or Wavefronts.Sloped
            ? Bore.Sections.Max(s => s.SteepestSlope)
            : 0;
        CutOnHertz = ElementTree
            .Sections(elements)
            .Min(e => ThinEnd.CutOnKa * e.Gas.SpeedOfSound / (2 * Math.PI * e.Section.LargestRadius));
        loads = [Load, .. ElementTree.Loads(elements), .. Blown.Loads];
        HighestHertz = loads.Min(end => end.HighestFrequency);
    }

    /// <summary>The shape.</summary>
    public Bore Bore { get; }

    /// <summary>What fills it at the blown end.</summary>
    public Air Air { get; }

    /// <summary>What fills it along the bore.</summary>
    public AirProfile AirProfile { get; }

    /// <summary>Losses, blown end, tolerance.</summary>
    public ColumnOptions Options { get; }

    /// <summary>What is assumed of the wave fronts: never <see cref="Acoustics.Wavefronts.Automatic"/>, but what that has become.</summary>
    public Wavefronts Wavefronts { get; }

    /// <summary>
    /// Cut-on of the first axisymmetric higher mode at the widest place, ka = 3.83: the end of plane-wave theory.
    /// </summary>
    public Frequency CutOn => Frequency.FromHertz(CutOnHertz);

    /// <summary>
    /// Up to where a single answer is given: <see cref="CutOn"/>, or lower where the model of a radiating end stops (ka = 3.8
    /// there for the exact ones).
    /// </summary>
    public Frequency HighestFrequency => Frequency.FromHertz(Math.Min(CutOnHertz, HighestHertz));

    /// <summary>ρc/S at the blown end: characteristic impedance without losses, Pa·s/m³.</summary>
    public double CharacteristicImpedance { get; }

    /// <summary>
    /// How many radial modes are carried: 1, the plane wave alone, unless <see cref="Wavefronts"/> is
    /// <see cref="Acoustics.Wavefronts.Multimodal"/>.
    /// </summary>
    public int ModeCount => Modal?.Modes ?? 1;

    /// <summary>The two-ports, every tone hole open.</summary>
    internal CompiledColumn Compiled => compiled;

    internal ColumnParts Parts => new(Bore, AirProfile, Options);

    /// <summary>The air that moves outside an open blown end.</summary>
    internal BlownLoad Blown => compiled.Blown;

    internal Element[] Elements => elements;

    internal WaveColumn Waves =>
        waves ?? Interlocked.CompareExchange(ref waves, new WaveColumn(this), null) ?? waves;

    /// <summary>The column for its radial modes, where these are asked for; else null.</summary>
    internal ModalColumn? Modal => Modes?.Chosen;

    /// <summary>The same for other numbers of modes.</summary>
    internal ModalFamily? Modes =>
        Wavefronts != Wavefronts.Multimodal
            ? null
            : modal ?? Interlocked.CompareExchange(ref modal, new ModalFamily(this), null) ?? modal;

    internal FarEndLoad Load => compiled.Load;

    /// <summary>The gas at the blown end.</summary>
    internal GasConstants Gas => Air.Constants;

    internal double CutOnHertz { get; }

    /// <summary>The highest frequency at which the column answers, Hz: where the radiation tables end.</summary>
    internal double HighestHertz { get; }

    /// <summary>Whether nothing is open but, perhaps, the blown end.</summary>
    internal bool IsSealed => loads.All(end => end.IsClosed);

    /// <summary>This column with other holes open: what was compiled is shared, only the holes are exchanged.</summary>
    /// <param name="fingering">Which tone holes are open.</param>
    /// <exception cref="ArgumentNullException">The fingering is null.</exception>
    /// <exception cref="ArgumentException">The fingering is for another number of holes.</exception>
    public Column WithFingering(Fingering fingering)
    {
        ArgumentNullException.ThrowIfNull(fingering);
        _ = fingering.ForHoles(Bore.Holes.Count, nameof(fingering));
        return With(Parts with { Options = Options with { Fingering = fingering } });
    }

    /// <summary>
    /// This column with another bore: what was compiled of sections, holes and ends that stay the same objects is shared, as after
    /// <see cref="Bore.WithSection"/>.
    /// </summary>
    /// <param name="bore">The other bore.</param>
    /// <exception cref="ArgumentNullException">The bore is null.</exception>
    /// <exception cref="ArgumentException">The fingering is for another number of holes.</exception>
    public Column WithBore(Bore bore)
    {
        ArgumentNullException.ThrowIfNull(bore);
        return With(Parts with { Bore = bore });
    }

    /// <summary>This column with other air in it.</summary>
    /// <param name="air">What fills it.</param>
    /// <exception cref="ArgumentNullException">The air is null.</exception>
    public Column WithAir(AirProfile air)
    {
        ArgumentNullException.ThrowIfNull(air);
        return With(Parts with { Air = air });
    }

    internal Column With(in ColumnParts parts) => new(parts, compiled);

    /// <summary>
    /// Input impedance over a grid of frequencies; at an open blown end with the air outside it, which the correction of
    /// <see cref="BlownEnd"/> stands for.
    /// </summary>
    /// <param name="grid">The frequencies; 0.001 Hz and up, to ka = 3.8 at a radiating end.</param>
    /// <returns>The curve; it warns where frequencies lie above <see cref="CutOn"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is beyond the model of the radiating end.</exception>
    public ImpedanceCurve Impedance(FrequencyGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        var real = GC.AllocateUninitializedArray<double>(grid.Count);
        var imaginary = GC.AllocateUninitializedArray<double>(grid.Count);
        var hertz = grid.Hertz;
        RequireRadiation(hertz[0], nameof(grid));
        RequireRadiation(hertz[^1], nameof(grid));
        Waves.Impedances(hertz, real, imaginary);
        return new ImpedanceCurve(
            grid,
            real,
            imaginary,
            WarningsUpTo(hertz[^1]),
            0,
            ModeConvergenceOver(grid)
        );
    }

    /// <summary>
    /// Input impedance as <see cref="Impedance(FrequencyGrid)"/>, but interpolated in the square root of frequency between some tens of
    /// frequencies for every few resonances: for dense curves, of a new column above all. What is interpolated is kept.
    /// </summary>
    /// <remarks>
    /// Pressure and flow at the blown end, for a given wave at the far end, are smooth in √f whatever resonates; they are
    /// interpolated, not Z. Where they are not smooth enough the exact values are taken. The last digits, within the error that is stated,
    /// depend on what the column was asked for before.
    /// </remarks>
    /// <param name="grid">The frequencies; as for <see cref="Impedance(FrequencyGrid)"/>.</param>
    /// <returns>The curve, with <see cref="ImpedanceCurve.InterpolationError"/>, in ordinary bores below 1e-10.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is beyond the model of the radiating end.</exception>
    public ImpedanceCurve InterpolatedImpedance(FrequencyGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        var hertz = grid.Hertz;
        RequireRadiation(hertz[0], nameof(grid));
        RequireRadiation(hertz[^1], nameof(grid));
        var real = GC.AllocateUninitializedArray<double>(grid.Count);
        var imaginary = GC.AllocateUninitializedArray<double>(grid.Count);
        var error = Waves.Segments.Interpolate(hertz, real, imaginary);
        return new ImpedanceCurve(
            grid,
            real,
            imaginary,
            WarningsUpTo(hertz[^1]),
            error,
            ModeConvergenceOver(grid)
        );
    }

    /// <summary>
    /// Input impedance over a grid and its gradient: what Z changes by with each of a number of dimensions and quantities of the air.
    /// </summary>
    /// <remarks>
    /// By reciprocity δZ = (1/U₀²)·∫(δZ'·U² − δY'·p²)dx, so that one pass from the far end, in which pressure and flow are
    /// integrated at the accuracy of doubles, gives all parameters at once. Only what a parameter does to walls, gas constants, holes
    /// and ends, real functions without resonances, is taken from differences of fourth order. Holes are differentiated by their own
    /// impedance. Over many frequencies, as for <see cref="InterpolatedImpedance"/>, what is smooth is interpolated.
    /// </remarks>
    /// <param name="grid">The frequencies; as for <see cref="Impedance(FrequencyGrid)"/>.</param>
    /// <param name="parameters">The parameters; if left out all of <see cref="ColumnParameter.AllOf"/>.</param>
    /// <exception cref="ArgumentException">The column does not have one of the parameters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is beyond the model of the radiating end.</exception>
    public ImpedanceGradient ImpedanceGradient(
        FrequencyGrid grid,
        IReadOnlyList<ColumnParameter>? parameters = null
    )
    {
        ArgumentNullException.ThrowIfNull(grid);
        var hertz = grid.Hertz;
        RequireRadiation(hertz[0], nameof(grid));
        RequireRadiation(hertz[^1], nameof(grid));
        ColumnParameter[] all = [.. parameters ?? ColumnParameter.AllOf(this)];
        var curve = new GradientCurve(this, all, hertz);
        return new ImpedanceGradient(
            new ImpedanceCurve(
                grid,
                curve.Real,
                curve.Imaginary,
                WarningsUpTo(hertz[^1]),
                curve.Error,
                ModeConvergenceOver(grid)
            ),
            all,
            curve.GradientReal,
            curve.GradientImaginary,
            curve.Error
        );
    }

    /// <summary>Input impedance, as <see cref="Impedance(FrequencyGrid)"/>, in plain numbers for loops.</summary>
    /// <param name="frequencies">
    /// Hz: 0.001 to <see cref="HighestFrequency"/>; fastest in rising order. Where many are asked for, what the column does over a band
    /// of them is compiled once and kept: later calls of that kind allocate nothing.
    /// </param>
    /// <param name="real">Receives Re Z, Pa·s/m³; as long as the frequencies.</param>
    /// <param name="imaginary">Receives Im Z, Pa·s/m³; as long as the frequencies.</param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is out of range; nothing is written.</exception>
    public void Impedance(ReadOnlySpan<double> frequencies, Span<double> real, Span<double> imaginary)
    {
        if (real.Length != frequencies.Length || imaginary.Length != frequencies.Length)
        {
            throw new ArgumentException(
                $"There are {frequencies.Length} frequencies but room for {real.Length} real and {imaginary.Length} "
                    + "imaginary parts; the three spans must be of one length."
            );
        }

        if (!FrequencyLimits.Hold(frequencies, LowestHertz, Math.Min(CutOnHertz, HighestHertz)))
        {
            foreach (var frequency in frequencies)
            {
                RequireAnswerable(frequency, nameof(frequencies));
            }
        }

        Waves.Impedances(frequencies, real, imaginary);
    }

    /// <summary>
    /// Input impedance Z = p/U, as <see cref="Impedance(FrequencyGrid)"/> but for the last digits, at one frequency: Pa·s/m³, exp(+jωt).
    /// </summary>
    /// <param name="frequency">0.001 Hz to <see cref="HighestFrequency"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public Complex ImpedanceAt(Frequency frequency)
    {
        RequireAnswerable(frequency.Hertz, nameof(frequency));
        return Waves.At(frequency.Hertz);
    }

    /// <summary>
    /// Pressure reflection coefficient (Z − Z₀)/(Z + Z₀) at the blown end; Z is the input impedance, Z₀ = ρc/S there.
    /// </summary>
    /// <param name="frequency">0.001 Hz to <see cref="HighestFrequency"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public Complex ReflectionAt(Frequency frequency)
    {
        var (p, u, _) = InputState(Omega(frequency));
        var incident = p + CharacteristicImpedance * u;
        return (p - CharacteristicImpedance * u) / incident;
    }

    /// <summary>The two-port of the whole bore, without what lies beyond either end.</summary>
    /// <param name="frequency">0.001 Hz to <see cref="HighestFrequency"/>.</param>
    /// <exception cref="NotSupportedException">Wave fronts are <see cref="Acoustics.Wavefronts.Multimodal"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    /// <exception cref="ArithmeticException">
    /// The bore attenuates so strongly that the entries exceed the range of double; its impedance can still be asked for.
    /// </exception>
    public TransferMatrix TransferMatrixAt(Frequency frequency)
    {
        var omega = Omega(frequency);
        if (Wavefronts == Wavefronts.Multimodal)
        {
            throw new NotSupportedException(
                "With several radial modes a bore is no two-port of one pressure and one flow at either end. Ask for the impedance, or "
                    + "for a column with other wave fronts."
            );
        }

        var product = new ScaledMatrix(TransferMatrix.Identity, 0);
        foreach (var element in elements)
        {
            product *= element.At(omega);
        }

        var scale = Math.Exp(product.LogScale);
        var m = product.Matrix;
        var matrix = new TransferMatrix(scale * m.A, scale * m.B, scale * m.C, scale * m.D);
        return
            Complex.IsFinite(matrix.A)
            && Complex.IsFinite(matrix.B)
            && Complex.IsFinite(matrix.C)
            && Complex.IsFinite(matrix.D)
            ? matrix
            : throw new ArithmeticException(
                "The bore attenuates too strongly for a transfer matrix in double precision; ask for its impedance."
            );
    }

    /// <summary>Z at ω without checks; includes the air moving outside an open blown end.</summary>
    internal Complex InputImpedance(double omega)
    {
        var (p, u, _) = InputState(omega);
        return p / u;
    }

    /// <summary>See <see cref="ImpedanceCurve.ModeConvergence"/>; 0 without modes.</summary>
    internal double ModeConvergenceAt(double[] hertz) => Modes?.ConvergenceAt(hertz) ?? 0;

    private Func<double>? ModeConvergenceOver(FrequencyGrid grid) =>
        Modes is { } modes ? () => modes.ConvergenceOver(grid) : null;

    /// <summary>What a user should know of answers up to a frequency in Hz.</summary>
    internal IReadOnlyList<string> WarningsUpTo(double hertz) =>
        ColumnWarnings.Of(this, loads, steepest, hertz);

    /// <summary>
    /// Pressure and flow at the blown end at ω, rad/s, as (p, U)·exp(LogScale) from the fixed state of the far end: the
    /// state kept near 1, its scale apart, so that no attenuation overflows.
    /// </summary>
    internal (Complex Pressure, Complex Flow, double LogScale) InputState(double omega)
    {
        // Where all is closed and far longer than the bore a wave, p/U is one over a small difference, and the air in it all that counts.
        if (Modal is { } modes && !(IsSealed && omega * Bore.LengthMetres < StillPhase * Gas.SpeedOfSound))
        {
            return modes.InputAt(omega);
        }

        var (p, u, logScale) = Chain.StateAtInlet(elements, Load, CharacteristicImpedance, omega);
        return (p + Blown.Impedance(omega) * u, u, logScale);
    }

    /// <summary>ω of a frequency that the column can answer for, rad/s; throws for others.</summary>
    internal double Omega(Frequency frequency)
    {
        RequireAnswerable(frequency.Hertz, nameof(frequency));
        return 2 * Math.PI * frequency.Hertz;
    }

    private void RequireAnswerable(double hertz, string parameter)
    {
        RequireRadiation(hertz, parameter);
        if (hertz > CutOnHertz)
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                hertz,
                $"{parameter} is {Require.Show(hertz, "Hz")}; plane-wave theory ends at "
                    + $"{Require.Show(CutOnHertz, "Hz")} in this bore. A curve over a FrequencyGrid goes beyond, with a warning."
            );
        }
    }

    private void RequireRadiation(double hertz, string parameter) =>
        FrequencyLimits.Require(hertz, LowestHertz, HighestHertz, parameter);
}
