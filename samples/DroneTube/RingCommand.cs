using System.CommandLine;
using System.Text;
using AirColumn.Recordings;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'ring': a recording of the tube being slapped or driven, beside its computed resonances.</summary>
internal static class RingCommand
{
    private static readonly SweptSine Sweep = new(
        Frequency.FromHertz(30),
        Frequency.FromHertz(2000),
        Duration.FromSeconds(10)
    );

    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var cut = TubeFile.Cut();
        var recording = new Option<string?>("--recording") { Description = "A WAV file." };
        var by = OneOf(
            "--by",
            "What makes it ring: tap (a palm slaps one end and stays there), noise, or sweep (the sound that --write-sweep writes). [default: tap]",
            "tap",
            "noise",
            "sweep"
        );
        var closed = OneOf(
            "--closed",
            "Which end is closed while it rings: mouth or far; the other is open. [default: mouth]",
            "mouth",
            "far"
        );
        var writeSweep = new OutputFile(
            "--write-sweep",
            "Instead of listening, write the sweep to play: the name of a new WAV file.",
            ".wav"
        );
        var joints = new JointOptions();
        var json = TableCommand.JsonOption();
        var command = new Command(
            "ring",
            "Finds resonances from a slap, noise or a sweep, and compares them with the computed ones."
        )
        {
            file.One,
            cut,
            recording,
            by,
            closed,
            writeSweep.Name,
            writeSweep.Force,
            json,
        };
        foreach (var option in joints.All.Concat(room.All).Concat(file.Options))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(recording);
            if (parsed.GetValue(writeSweep.Name) is { } sweep)
            {
                WriteSweep(parsed, writeSweep, sweep, file, path);
                return;
            }

            var assembly = file.Read(parsed).Assembly;
            var column = CutTube.Column(
                joints.Heard(parsed, assembly),
                parsed.GetRequiredValue(cut)!.Value,
                room.Air(parsed),
                parsed.GetValue(closed) == "far"
            );
            if (path is null)
            {
                throw new BadInputException(
                    "Name what to listen to with --recording, or a file to write with --write-sweep."
                );
            }

            var response = SoundFile.Read(path, sound => Heard(sound, parsed.GetValue(by) ?? "tap", parsed));
            if (response.Reason is { } reason)
            {
                throw new FailureException($"{path}: {reason}");
            }

            var pairs = response.CompareWith(column, TimeLimitOption.Token(parsed));
            if (pairs.All(pair => pair.Measured is null))
            {
                var heard = response.Resonances.Select(one => Show.Text($"{one.Frequency.Hertz:0.0} Hz"));
                throw new FailureException(
                    $"{path}: the sound that rings ({string.Join(", ", heard)}) lies near no resonance of this tube. "
                        + "Check the cut, the parts and which end is closed, and that this tube was recorded."
                );
            }

            var text = parsed.GetValue(json) ? Json(pairs) : Table(pairs);
            ConsoleProgram.Warn(
                parsed,
                [.. assembly.Remarks.Select(remark => remark.Text), .. response.Warnings]
            );
            Answer.Write(parsed, output => output.Write(text));
        });
        return command;
    }

    private static void WriteSweep(
        ParseResult parsed,
        OutputFile output,
        string path,
        TubeFile parts,
        string? recording
    )
    {
        if (recording is not null)
        {
            throw new BadInputException("--recording and --write-sweep are given; leave one of them out.");
        }

        output.Checked(parsed, path, parsed.GetRequiredValue(parts.One));
        var rate = Frequency.FromHertz(48_000);
        double[] samples = [.. Sweep.Samples(rate).Select(sample => 0.5 * sample)];
        output.Write(parsed, path, stream => WaveFile.Write16(stream, samples, rate));
        Answer.Write(
            parsed,
            output =>
                output.WriteLine(
                    $"The sweep is {path}: 10 s from 30 Hz to 2 kHz. Begin softly: speakers are loud in a tube."
                )
        );
    }

    private static Option<string?> OneOf(string name, string description, params string[] words) =>
        Options.Parsed<string?>(
            name,
            description,
            text =>
                words.Contains(text)
                    ? text
                    : throw new FormatException(
                        $"'{text}' is not allowed; write {string.Join(" or ", words)}."
                    )
        );

    private static TubeResponse Heard(Recording sound, string by, ParseResult parsed)
    {
        var token = TimeLimitOption.Token(parsed);
        var progress = new Progress(parsed, 100);
        try
        {
            return by switch
            {
                "noise" => TubeResponse.FromNoise(sound, null, progress, token),
                "sweep" => TubeResponse.FromSweep(sound, Sweep, null, progress, token),
                _ => TubeResponse.FromTap(sound, null, progress, token),
            };
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem, "--recording"));
        }
    }

    private static string Table(IReadOnlyList<ResonanceComparison> pairs)
    {
        var lines = new StringBuilder();
        lines.Row("resonance  computed     rings at              off by       Q computed, heard");
        foreach (var pair in pairs)
        {
            lines.Row(
                pair.Measured is { } heard
                    ? Show.Text(
                        $"{pair.Number, 5}      {pair.Computed.Pole.Real, 7:0.00} Hz   {heard.Frequency.Hertz, 7:0.00} Hz ± {1.96 * heard.StandardUncertaintyCents, 4:0.0} c   {pair.Cents, 6:+0.0;-0.0;0.0} c     {pair.Computed.QualityFactor, 3:0}, {heard.QualityFactor:0}"
                    )
                    : Show.Text($"{pair.Number, 5}      {pair.Computed.Pole.Real, 7:0.00} Hz   not heard")
            );
        }

        lines.Paragraph(
            "Both columns give the frequency of the sound as it dies away. A few cents may be the room's temperature: 1 °C is 3 cents."
        );
        return lines.ToString();
    }

    private static string Json(IReadOnlyList<ResonanceComparison> pairs) =>
        JsonText.Of(json =>
        {
            json.WriteStartArray("resonances");
            foreach (var pair in pairs)
            {
                json.WriteStartObject();
                json.WriteNumber("number", pair.Number);
                json.Number("computedHz", pair.Computed.Pole.Real);
                json.Number("computedQ", pair.Computed.QualityFactor);
                json.Number("heardHz", pair.Measured?.Frequency.Hertz ?? double.NaN);
                json.Number(
                    "standardUncertaintyCents",
                    pair.Measured?.StandardUncertaintyCents ?? double.NaN
                );
                json.Number("heardQ", pair.Measured?.QualityFactor ?? double.NaN);
                json.Number("cents", pair.Cents ?? double.NaN);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}
