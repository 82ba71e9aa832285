using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Multimodal;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Spectra;
using UnitsNet;

namespace AirColumn;

/// <summary>An air column: a bore filled with air, compiled once, that answers at any frequency.</summary>
/// <remarks>
/// <para>
/// The bore has a circular cross-section. <see cref="ColumnOptions"/> sets the model: one-dimensional waves with plane or curved fronts (source:
/// chaigne2016, ch. 7) or several radial modes (pagneux1996), the losses at the wall, the radiation of the far end. Sudden changes of diameter have
/// the air mass of kergomard1987. Holes and branches must be small against the wavelength where they join the bore. Open holes
/// and the open end hear each other outside (<see cref="ColumnOptions.MutualRadiation"/>). The vibration of the wall is not modelled. Valid below <see cref="CutOn"/>.
/// </para>
/// <para>
/// Questions about resonances, uncertainty, standing waves and power are extension methods in this namespace: <c>column.FirstResonances(4)</c>.
/// Searches for dimensions take a column and give a new one: <c>SectionLength</c>, <c>ShapeSearch</c>, <c>TubeSet</c>.
/// </para>
/// <para>Immutable; safe to share between threads.</para>
/// </remarks>
public sealed class Column
{
    // A period of a quarter of an hour: below it nothing is sound, and quotients of rounding begin to matter.
    private const double LowestHertz = 1e-3;

    private readonly MouthStore mouths; // shared with columns made from this one
    private Answers? answers; // made when first asked for
    private ModalFamily? modal; // likewise

    /// <summary>Compiles a column.</summary>
    /// <param name="bore">Its shape.</param>
    /// <param name="air">The air in it: one <see cref="AirColumn.Air"/>, or a profile along the bore.</param>
    /// <param name="options">Losses, wave fronts, blown end, tolerance. Default: those of a new <see cref="ColumnOptions"/>.</param>
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

    internal Column(in ColumnParts parts, Column? previous)
    {
        Parts = parts;
        Model = new ColumnModel(parts, previous?.Model.Line);
        mouths = previous?.mouths ?? new MouthStore();
        Air = parts.Air.At(0, Bore.LengthMetres);
    }

    /// <summary>The shape.</summary>
    public Bore Bore => Parts.Bore;

    /// <summary>The air at the blown end.</summary>
    public Air Air { get; }

    /// <summary>The air along the bore.</summary>
    public AirProfile AirProfile => Parts.Air;

    /// <summary>All choices that are neither geometry nor air, such as the fingering, the blown end and the wave fronts asked for.</summary>
    public ColumnOptions Options => Parts.Options;

    /// <summary>
    /// The model of the wave fronts in use. If the options ask for <see cref="AirColumn.Wavefronts.Automatic"/>, it is the model that was
    /// chosen.
    /// </summary>
    public Wavefronts Wavefronts => Model.Options.Wavefronts;

    /// <summary>
    /// Cut-on frequency of the first axisymmetric higher mode at the widest place, ka = 3.83: the end of plane-wave theory.
    /// </summary>
    public Frequency CutOn => Frequency.FromHertz(CutOnHertz);

    /// <summary>
    /// The highest frequency at which single questions are answered: <see cref="CutOn"/>, or the limit of the model of a radiating end
    /// (ka = 3.8 for exact radiation), whichever is lower.
    /// </summary>
    public Frequency HighestFrequency => Frequency.FromHertz(Math.Min(CutOnHertz, HighestHertz));

    /// <summary>ρc/S at the blown end: characteristic impedance without losses, Pa·s/m³.</summary>
    public double CharacteristicImpedance => Model.Impedance;

    internal ColumnParts Parts { get; }

    /// <summary>What solvers see of it.</summary>
    internal ColumnModel Model { get; }

    /// <summary>Whether openings of it hear each other outside.</summary>
    internal bool HasMutualRadiation => Model.Openings is not null;

    internal MouthStore Mouths => mouths;

    /// <summary>The gas at the blown end.</summary>
    internal GasConstants Gas => Model.Gas;

    internal double CutOnHertz => Model.CutOnHertz;

    /// <summary>The highest frequency at which the column answers, Hz: where the radiation tables end.</summary>
    internal double HighestHertz => Model.HighestHertz;

    /// <summary>
    /// This column with other holes open. Everything that was compiled is shared; only the holes are exchanged. The <see cref="Options"/> of
    /// the new column hold the new <see cref="ColumnOptions.Fingering"/>.
    /// </summary>
    /// <param name="fingering">The open tone holes.</param>
    /// <returns>A column with these holes open.</returns>
    /// <exception cref="ArgumentNullException">The fingering is null.</exception>
    /// <exception cref="ArgumentException">The fingering is for another number of holes.</exception>
    public Column WithFingering(Fingering fingering)
    {
        ArgumentNullException.ThrowIfNull(fingering);
        _ = fingering.ForHoles(Bore.Holes.Count, nameof(fingering));
        return With(Parts with { Options = Options with { Fingering = fingering } });
    }

    /// <summary>
    /// This column with another bore. Sections, holes and ends that are the same objects in both bores keep their compiled data.
    /// <see cref="Bore.WithSection"/> replaces one section and keeps all other objects.
    /// </summary>
    /// <param name="bore">The other bore.</param>
    /// <returns>A column with this bore.</returns>
    /// <exception cref="ArgumentNullException">The bore is null.</exception>
    /// <exception cref="ArgumentException">The fingering is for another number of holes.</exception>
    public Column WithBore(Bore bore)
    {
        ArgumentNullException.ThrowIfNull(bore);
        return With(Parts with { Bore = bore });
    }

    /// <summary>This column with other air in it.</summary>
    /// <param name="air">The air in it.</param>
    /// <returns>A column with this air.</returns>
    /// <exception cref="ArgumentNullException">The air is null.</exception>
    public Column WithAir(AirProfile air)
    {
        ArgumentNullException.ThrowIfNull(air);
        return With(Parts with { Air = air });
    }

    /// <summary>
    /// A column with another bore, air and options. It shares with this column all parts that do not differ, as with <see cref="WithBore"/>.
    /// The largest saving is the field of a mouth that both columns have.
    /// </summary>
    /// <param name="bore">The other bore.</param>
    /// <param name="air">The air in it.</param>
    /// <param name="options">The choices.</param>
    /// <returns>The new column.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The fingering is for another number of holes.</exception>
    public Column With(Bore bore, AirProfile air, ColumnOptions options)
    {
        ArgumentNullException.ThrowIfNull(bore);
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(options);
        return With(new ColumnParts(bore, air, options));
    }

    internal Column With(in ColumnParts parts) => new(parts, this);

    /// <summary>
    /// This column with the wave fronts and the number of modes that it has taken made its options, so that columns made from it have
    /// the same and differ in nothing but what is changed.
    /// </summary>
    internal Column Decided(CancellationToken cancellationToken)
    {
        var modes = Wavefronts == Wavefronts.Multimodal ? ModeCount(cancellationToken) : Options.Modes;
        return Options.Wavefronts == Wavefronts && Options.Modes == modes
            ? this
            : With(Parts with { Options = Options with { Wavefronts = Wavefronts, Modes = modes } });
    }

    /// <summary>
    /// The number of radial modes carried: 1, the plane wave alone, unless <see cref="Wavefronts"/> is
    /// <see cref="AirColumn.Wavefronts.Multimodal"/>. If <see cref="ColumnOptions.Modes"/> is null, the number is computed when first needed.
    /// </summary>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The number of modes, 1 or more.</returns>
    public int ModeCount(CancellationToken cancellationToken = default) =>
        Modal(cancellationToken)?.Modes ?? 1;

    /// <summary>What it answers at the blown end, prepared when first asked for.</summary>
    internal Answers Answers(CancellationToken cancellationToken = default) =>
        answers
        ?? Interlocked.CompareExchange(
            ref answers,
            new Answers(Wave(cancellationToken), Options.RelativeTolerance),
            null
        )
        ?? answers;

    /// <summary>The column for its radial modes, where these are asked for; else null.</summary>
    internal ModalColumn? Modal(CancellationToken cancellationToken = default) =>
        Modes(cancellationToken)?.Chosen;

    /// <summary>The same for other numbers of modes.</summary>
    internal ModalFamily? Modes(CancellationToken cancellationToken) =>
        Wavefronts != Wavefronts.Multimodal
            ? null
            : modal
                ?? Interlocked.CompareExchange(
                    ref modal,
                    new ModalFamily(Model, mouths, cancellationToken),
                    null
                )
                ?? modal;

    /// <summary>
    /// Input impedance over a grid of frequencies. At an open blown end it includes the air outside, as given by the correction of
    /// <see cref="BlownEnd"/>.
    /// </summary>
    /// <remarks>
    /// For many frequencies, pressure and flow at the blown end are interpolated in √f. For a given wave at the far end they are smooth functions
    /// of frequency, even at resonances. <see cref="ImpedanceCurve.InterpolationError"/> states the possible error; if it would be too large,
    /// each frequency is computed by itself.
    /// </remarks>
    /// <param name="grid">The frequencies; 0.001 Hz and up, to ka = 3.8 at a radiating end.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The curve; it has a warning if frequencies lie above <see cref="CutOn"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is beyond the model of the radiating end.</exception>
    public ImpedanceCurve Impedance(FrequencyGrid grid, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(grid);
        var real = GC.AllocateUninitializedArray<double>(grid.Count);
        var imaginary = GC.AllocateUninitializedArray<double>(grid.Count);
        var hertz = grid.Hertz;
        RequireRadiation(grid);
        var error = Answers(cancellationToken).Impedances(hertz, real, imaginary, cancellationToken);
        return Curve(grid, real, imaginary, error);
    }

    /// <summary>
    /// Input impedance as <see cref="Impedance(FrequencyGrid, CancellationToken)"/> computes it, in plain numbers for loops.
    /// </summary>
    /// <param name="frequencies">
    /// Hz: 0.001 to <see cref="HighestFrequency"/>; fastest in rising order. For many frequencies the column is compiled once over their range and
    /// kept, so that later calls over the same range allocate nothing.
    /// </param>
    /// <param name="real">Receives Re Z, Pa·s/m³; as long as the frequencies.</param>
    /// <param name="imaginary">Receives Im Z, Pa·s/m³; as long as the frequencies.</param>
    /// <param name="cancellationToken">
    /// Ends the computation early with an <see cref="OperationCanceledException"/>; the contents of the spans are then undefined.
    /// </param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is out of range; nothing is written.</exception>
    public void Impedance(
        ReadOnlySpan<double> frequencies,
        Span<double> real,
        Span<double> imaginary,
        CancellationToken cancellationToken = default
    )
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

        _ = Answers(cancellationToken).Impedances(frequencies, real, imaginary, cancellationToken);
    }

    /// <summary>
    /// Input impedance Z = p/U at one frequency, Pa·s/m³, exp(+jωt). It equals the value of
    /// <see cref="Impedance(FrequencyGrid, CancellationToken)"/> except in the last digits.
    /// </summary>
    /// <param name="frequency">0.001 Hz to <see cref="HighestFrequency"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>Z in Pa·s/m³.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public Complex ImpedanceAt(Frequency frequency, CancellationToken cancellationToken = default)
    {
        RequireAnswerable(frequency.Hertz, nameof(frequency));
        var (p, u, _) = Answers(cancellationToken).At(frequency.Hertz, cancellationToken);
        return p / u;
    }

    /// <summary>
    /// Pressure reflection coefficient (Z − Z₀)/(Z + Z₀) at the blown end; Z is the input impedance, Z₀ = ρc/S there.
    /// </summary>
    /// <param name="frequency">0.001 Hz to <see cref="HighestFrequency"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The reflection coefficient, dimensionless.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public Complex ReflectionAt(Frequency frequency, CancellationToken cancellationToken = default)
    {
        RequireAnswerable(frequency.Hertz, nameof(frequency));
        var (p, u, _) = Answers(cancellationToken).At(frequency.Hertz, cancellationToken);
        var incident = p + CharacteristicImpedance * u;
        return (p - CharacteristicImpedance * u) / incident;
    }

    /// <summary>The two-port of the whole bore, without the air outside its ends.</summary>
    /// <remarks>The matrix leaves out that openings hear each other outside (<see cref="ColumnOptions.MutualRadiation"/>).</remarks>
    /// <param name="frequency">0.001 Hz to <see cref="HighestFrequency"/>.</param>
    /// <returns>The matrix of the whole bore.</returns>
    /// <exception cref="NotSupportedException">Wave fronts are <see cref="AirColumn.Wavefronts.Multimodal"/>.</exception>
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
                "With several radial modes a bore is not a two-port with one pressure and one flow at each end. Ask for the impedance, or "
                    + "for a column with other wave fronts."
            );
        }

        var (a, b, c, d) = TwoPort.Of(Model, omega);
        var matrix = new TransferMatrix(a, b, c, d);
        return
            Complex.IsFinite(matrix.A)
            && Complex.IsFinite(matrix.B)
            && Complex.IsFinite(matrix.C)
            && Complex.IsFinite(matrix.D)
            ? matrix
            : throw new ArithmeticException(
                "The bore attenuates too strongly for a transfer matrix in double precision; ask for its impedance instead."
            );
    }

    /// <summary>See <see cref="ImpedanceCurve.ModeConvergence"/>; 0 without modes.</summary>
    internal double ModeConvergenceAt(double[] hertz, CancellationToken cancellationToken) =>
        Modes(cancellationToken)?.ConvergenceAt(hertz, cancellationToken) ?? 0;

    private InputWave Wave(CancellationToken cancellationToken)
    {
        var plane = new PlaneWave(Model.Way, Model.End, Model.Blown, Model.Impedance, Model.Openings);
        return Modal(cancellationToken) is { } modes ? new ModalWave(modes, Model, plane) : plane;
    }

    private double ModeConvergenceOver(FrequencyGrid grid, CancellationToken cancellationToken) =>
        Modes(cancellationToken)?.ConvergenceOver(grid.Hertz, cancellationToken) ?? 0;

    /// <summary>What a user should know of answers up to a frequency in Hz.</summary>
    internal IReadOnlyList<string> WarningsUpTo(double hertz) => ColumnWarnings.Of(Model, hertz);

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

    /// <summary>Throws where a frequency of a grid is beyond the models of radiation.</summary>
    internal void RequireRadiation(FrequencyGrid grid)
    {
        RequireRadiation(grid.Hertz[0], nameof(grid));
        RequireRadiation(grid.Hertz[^1], nameof(grid));
    }

    /// <summary>A curve of this column with what is to be said of it.</summary>
    internal ImpedanceCurve Curve(FrequencyGrid grid, double[] real, double[] imaginary, double error) =>
        new(
            this,
            grid,
            real,
            imaginary,
            WarningsUpTo(grid.Hertz[^1]),
            error,
            Wavefronts == Wavefronts.Multimodal ? token => ModeConvergenceOver(grid, token) : null
        );

    private void RequireRadiation(double hertz, string parameter) =>
        FrequencyLimits.Require(hertz, LowestHertz, HighestHertz, parameter);

    /// <summary>The bore and the air.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => $"{Bore}; {AirProfile}";
}
