using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn.Gases;
using AirColumn.Pitches;
using AirColumn.Workshop;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace BenchPage.Engine;

/// <summary>Answers what the page asks. The tube asked about last is kept, so that its plan does not begin anew.</summary>
internal sealed partial class Workbench
{
    private BenchState? asked;
    private Job? job;

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
                    InAll = LengthText.Tape(tube.Bore.Length, now.Units),
                    CentsPerMillimetre = now.Exact.CentsPerMillimetre,
                    Notes = Notes(now),
                    Side = TubePictures.Side(tube, question.Width, now.Units),
                };
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new CutAnswer { Error = Plain(problem), ErrorPart = PartOf(problem.Message) };
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
                Impedance = TubePictures.Impedance(now.Exact, now.Note, now.Tuning),
            };
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new PlanAnswer { Error = Plain(problem) };
        }
    }

    public SheetAnswer Sheet(Question question)
    {
        try
        {
            var now = JobOf(question.State);
            if (!now.Build.IsSolved)
            {
                return new SheetAnswer(now.Build.ExplanationIn(now.Units), "", "");
            }

            var title = now.File.Name.Length > 0 ? $"{now.File.Name} on {now.Note}" : "";
            return new SheetAnswer("", title, BuildSheet.Html(now.Build, title, now.Units));
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new SheetAnswer(Plain(problem), "", "");
        }
    }

    private static IReadOnlyList<NoteRow> Notes(Job now) =>
        [
            .. now
                .Exact.Resonances!.Take(4)
                .Select(
                    (resonance, i) =>
                    {
                        var nearest = resonance.Nearest(now.Tuning);
                        return new NoteRow(
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"{resonance.Frequency.Hertz:0.00} Hz"
                            ),
                            nearest.Pitch.ToString(),
                            nearest.Cents,
                            i == 0
                                ? ""
                                : now.Exact.Overblown.FirstOrDefault(note =>
                                    note.Resonance == i + 1
                                )?.Interval
                                    ?? ""
                        );
                    }
                ),
        ];

    private static IReadOnlyList<string> Choices(SawLength length, LengthUnits units) =>
        units == LengthUnits.Both
            ? [length.In(LengthUnits.Millimetres), length.In(LengthUnits.Inches)]
            : [length.In(units)];

    private Job JobOf(BenchState state)
    {
        if (job is null || asked != state)
        {
            job = null;
            job = new Job(state);
            asked = state;
        }

        return job;
    }

    // Without the parameter that .NET appends.
    private static string Plain(Exception problem)
    {
        var appended = problem.Message.IndexOf(" (Parameter '", StringComparison.Ordinal);
        return appended < 0 ? problem.Message : problem.Message[..appended];
    }

    private static int PartOf(string message) =>
        Place().Match(message) is { Success: true } match
            ? int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture)
            : -1;

    [GeneratedRegex(@"^parts\[(\d+)\]")]
    private static partial Regex Place();

    // A tube and a note, planned as far as it was asked.
    private sealed class Job
    {
        private readonly Lazy<TubeBuild> build;

        public Job(BenchState state)
        {
            Units = state.Units switch
            {
                "mm" => LengthUnits.Millimetres,
                "in" => LengthUnits.Inches,
                _ => LengthUnits.Both,
            };
            Note = DroneNote.Parse(state.Note);
            Tuning = Tuning.WithReference(Frequency.FromHertz(state.Reference));
            File = PartsFile.Read(state.Parts, Catalogue.Standard);
            Exact = TubeBuilder.Exact(
                File.Assembly,
                Note,
                Tuning,
                Air.At(
                    Temperature.FromDegreesCelsius(state.Temperature),
                    RelativeHumidity.FromPercent(state.Humidity)
                )
            );
            build = new(() => Exact.Plan());
        }

        public PartsFile File { get; }
        public Pitch Note { get; }
        public Tuning Tuning { get; }
        public LengthUnits Units { get; }
        public ExactCut Exact { get; }
        public TubeBuild Build => build.Value;
    }
}
