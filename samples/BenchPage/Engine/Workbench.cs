using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn;
using AirColumn.Workshop;
using AirColumn.Workshop.Instruments;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace BenchPage.Engine;

/// <summary>Answers what the page asks. The tube asked about last is kept, so that its plan does not begin anew.</summary>
internal sealed partial class Workbench
{
    private BenchState? asked;
    private Job? job;
    private ExactCut? near; // of the last tube that could be planned: the next is like it

    public static StartAnswer Start() =>
        new(
            [
                .. Catalogue.Standard.Pipes.Select(pipe => new StockRow(
                    pipe.Name,
                    LengthText.Caliper(pipe.Inside, LengthUnits.Both),
                    LengthText.Caliper(pipe.Outside, LengthUnits.Both),
                    pipe.Inside.Millimeters
                )),
            ],
            [.. Catalogue.Standard.Sockets.Select(socket => socket.Name)],
            [.. Scale.All.Select(scale => scale.Name)],
            Cautions.First,
            [
                .. Cautions.All.Select(caution => new CautionRow(
                    caution.Step.ToString(),
                    caution.Title,
                    caution.Text,
                    caution.Source
                )),
            ]
        );

    /// <summary>What is wrong with a parts file; empty if it can be read.</summary>
    public static string Check(string parts)
    {
        try
        {
            PartsFile.Read(parts, Catalogue.Standard);
            return "";
        }
        catch (FormatException problem)
        {
            return OneLine.Of(problem);
        }
    }

    public CutAnswer Cut(Question question)
    {
        try
        {
            var now = JobOf(question.State);
            var tube = now.Exact.IsSolved ? now.Exact.Exact.Tube : null;
            var answer = new CutAnswer
            {
                Remarks =
                [
                    .. now.File.Assembly.Remarks.Select(remark => new PartNote(remark.Part, remark.Text)),
                ],
                Pipe = now.File.Assembly.FreePipe!.Name,
            };
            return tube is null
                ? answer with
                {
                    Error = now.Exact.ExplanationIn(now.Units),
                }
                : answer with
                {
                    Cut = LengthText.Tape(now.Exact.Exact!.Cut, now.Units),
                    CutMillimetres = now.Exact.Exact.Cut.Millimeters,
                    CentsPerMillimetre = now.Exact.CentsPerMillimetre,
                    Notes = Notes(now, now.Exact.Resonances!),
                    Fingered = Fingered(now, now.Exact.Exact),
                    Side = TubePictures.Side(tube, question.Width, now.Units),
                };
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new CutAnswer { Error = OneLine.Of(problem), ErrorPart = PartOf(problem) };
        }
    }

    /// <summary>The tube at a cut that is tried: its notes and its drawing.</summary>
    public CutAnswer Try(Question question)
    {
        try
        {
            var now = JobOf(question.State);
            var cut = Length.FromMillimeters(question.Tried);
            return
                TubeBuilder.Built(now.File.Assembly, cut, now.Air, now.Target, now.Exact.Exact?.Column)
                    is { } built
                ? new CutAnswer
                {
                    Cut = LengthText.Tape(cut, now.Units),
                    CutMillimetres = question.Tried,
                    FromNote = built.Cents,
                    Notes = Notes(now, built.Column.FirstResonances(4)),
                    Fingered = Fingered(now, built),
                    Side = TubePictures.Side(built.Tube, question.Width, now.Units),
                }
                : new CutAnswer { Error = now.Exact.ExplanationIn(now.Units) };
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new CutAnswer { Error = OneLine.Of(problem) };
        }
    }

    public PlanAnswer Plan(Question question)
    {
        try
        {
            var now = JobOf(question.State);
            var build = now.Build;
            if (!build.IsSolved)
            {
                return new PlanAnswer { Error = build.ExplanationIn(now.Units) };
            }

            var remarks = build.Assembly.Remarks.Select(remark => remark.Text);
            var cents = build.Budget.PlusMinusCents;
            return new PlanAnswer
            {
                FirstCut = Choices(build.FirstLength, now.Units),
                PlusMinusCents = cents,
                PlusMinus = LengthText.Tape(
                    Length.FromMillimeters(Math.Abs(cents / build.CentsPerMillimetre)),
                    now.Units
                ),
                Played = string.Create(
                    CultureInfo.InvariantCulture,
                    $"{build.Played.Correction.MeanCents:+0.#;-0.#;0} ±{build.Played.PlusMinusCents:0.#}"
                ),
                Warnings = [.. build.WarningsIn(now.Units).Except(remarks)],
            };
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new PlanAnswer { Error = OneLine.Of(problem) };
        }
    }

    /// <summary>The impedance chart of a tube that has a cut, SVG.</summary>
    public string Chart(Question question)
    {
        var now = JobOf(question.State);
        return TubePictures.Impedance(now.Exact, now.Note, now.Tuning);
    }

    public SheetAnswer Sheet(Question question)
    {
        try
        {
            var now = JobOf(question.State);
            if (!now.Build.IsSolved)
            {
                return new SheetAnswer(now.Build.ExplanationIn(now.Units), "");
            }

            return new SheetAnswer(
                "",
                BuildSheet.Html(now.Build, BuildSheet.Title(now.File.Name, now.Note), now.Units)
            );
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new SheetAnswer(OneLine.Of(problem), "");
        }
    }

    /// <summary>The template of a part: the saw line of a pipe, the arc of a bend, holes.</summary>
    public static SheetAnswer Template(Question question, int part)
    {
        try
        {
            return new SheetAnswer(
                "",
                Templates.Of(
                    PartsFile.Read(question.State.Parts, Catalogue.Standard).Assembly,
                    part,
                    Room.Units(question.State)
                )
            );
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new SheetAnswer(OneLine.Of(problem), "");
        }
    }

    private static IReadOnlyList<NoteRow> Notes(Job now, ResonanceList resonances) =>
        [
            .. resonances
                .Take(4)
                .Select(
                    (resonance, i) =>
                        Row(
                            resonance.Frequency,
                            resonance.Nearest(now.Tuning),
                            i == 0
                                ? Words.PageWords.Drone
                                : OverblownNote.IntervalOf(resonances[0].Frequency, resonance.Frequency)
                        )
                ),
        ];

    private static IReadOnlyList<NoteRow> Fingered(Job now, BuiltTube built) =>
        [
            .. FingeredNote
                .Of(built, now.Tuning)
                .Select(note =>
                    Row(
                        note.Frequency,
                        note.Nearest,
                        string.Join(", ", note.Opened.Select(hole => hole.Name))
                    )
                ),
        ];

    private static NoteRow Row(Frequency frequency, PitchReading nearest, string about) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"{frequency.Hertz:0.00} Hz"),
            nearest.Pitch.ToString(),
            nearest.Cents,
            about
        );

    private static IReadOnlyList<string> Choices(SawLength length, LengthUnits units) =>
        units == LengthUnits.Both
            ? [length.In(LengthUnits.Millimetres), length.In(LengthUnits.Inches)]
            : [length.In(units)];

    private Job JobOf(BenchState state)
    {
        if (job is null || asked != state)
        {
            job = null;
            job = new Job(state, near);
            asked = state;
            near = job.Exact.IsSolved ? job.Exact : near;
        }

        return job;
    }

    // Of what does not go together, and of what cannot be read.
    private static int PartOf(Exception problem) =>
        problem.InnerException is PartException wrong ? wrong.Part
        : Place().Match(problem.Message) is { Success: true } match
            ? int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture)
        : -1;

    [GeneratedRegex(@"^parts\[(\d+)\]")]
    private static partial Regex Place();

    // A tube and a note, planned as far as it was asked.
    private sealed class Job
    {
        private readonly Lazy<TubeBuild> build;

        public Job(BenchState state, ExactCut? near)
        {
            Units = Room.Units(state);
            Note = DroneNote.Parse(state.Note);
            Tuning = Room.Tuning(state);
            File = PartsFile.Read(state.Parts, Catalogue.Standard);
            Air = Room.Air(state);
            Exact = TubeBuilder.Exact(File.Assembly, Note, Tuning, Air, near: near);
            build = new(() => Exact.Plan());
        }

        public PartsFile File { get; }
        public Pitch Note { get; }
        public Tuning Tuning { get; }
        public LengthUnits Units { get; }
        public AirColumn.Air Air { get; }
        public Frequency Target => Tuning.FrequencyOf(Note);
        public ExactCut Exact { get; }
        public TubeBuild Build => build.Value;
    }
}
