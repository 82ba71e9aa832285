using System.CommandLine;
using System.Text;
using AirColumn;
using AirColumn.Recordings;
using AirColumn.Recordings.Previews;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'preview': what tubes that are not built yet might sound like, one after the other in one file.</summary>
internal static class PreviewCommand
{
    private const double Pause = 0.6; // seconds

    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var note = TubeFile.Note();
        note.Description = "Each tube is cut so that its first resonance is on this note.";
        var output = new OutputFile(
            "--out",
            "The WAV file to write. [default: beside the first parts file, with the note in its name]",
            ".wav"
        );
        var overblown = Options.WholeNumber(
            "--overblown",
            "How many overblown notes follow each drone. [default: 1]",
            0,
            3
        );
        var command = new Command(
            "preview",
            "Writes the sound of tubes, by a simple model of lips, to compare shapes by ear."
        )
        {
            file.Several,
            note,
            output.Name,
            output.Force,
            overblown,
        };
        foreach (var option in room.All.Concat(file.Options))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var pitch = parsed.GetRequiredValue(note)!.Value;
            var files = parsed.GetRequiredValue(file.Several);
            var path = output.Checked(parsed, parsed.GetValue(output.Name) ?? Name(files, pitch), files);
            var warnings = new List<string>();
            var lines = new StringBuilder();
            var sound = new List<double>();
            foreach (var (tube, parts) in file.ReadAll(parsed).Zip(files))
            {
                var name = tube.Name.Length > 0 ? tube.Name : Path.GetFileNameWithoutExtension(parts);
                var build = Planned.BuildIfAny(tube, pitch, room, parsed);
                if (build.Exact is not { } exact)
                {
                    throw new FailureException($"{name}: {build.ExplanationIn(Show.Units)}");
                }

                warnings.AddRange(build.Warnings);
                lines.Row($"{name}, cut {Show.Both(exact.Cut)}");
                for (var register = 1; register <= 1 + (parsed.GetValue(overblown) ?? 1); register++)
                {
                    warnings.AddRange(
                        Add(exact.Column, register, sound, lines, TimeLimitOption.Token(parsed))
                    );
                }
            }

            if (sound.Count == 0)
            {
                throw new FailureException("No note speaks in this model; nothing is written.");
            }

            ConsoleProgram.Warn(parsed, [.. warnings.Distinct()]);
            lines.Paragraph(
                "The lips of this model play higher above the resonance than players do, and differently for each shape: judge colour and the interval to the overblown notes, not the pitch."
            );
            Answer.Write(parsed, text => text.Write(lines.ToString()));
            var rate = Frequency.FromHertz(new PreviewOptions().SampleRate);
            output.Write(parsed, path, stream => WaveFile.Write16(stream, sound.ToArray(), rate));
            Answer.Write(parsed, text => text.WriteLine($"The sound is {path}."));
        });
        return command;
    }

    private static string Name(string[] files, Pitch note) =>
        files[0] == "-"
            ? throw new BadInputException(
                "The parts come from the standard input, so there is no name for the sound file; give --out FILE."
            )
            : FileNames.Beside(
                files[0],
                $"{(files.Length > 1 ? "and-others-" : "")}{FileNames.Of(note)}.wav"
            );

    private static IReadOnlyList<string> Add(
        Column column,
        int register,
        List<double> sound,
        StringBuilder lines,
        CancellationToken token
    )
    {
        var preview = DronePreview.Of(column, new PreviewOptions { Register = register }, token);
        var rate = preview.SampleRate;
        var name = register == 1 ? "drone" : Show.Text($"overblown {register}");
        if (preview.Status != PreviewStatus.Speaks)
        {
            lines.Row($"    —      {name}: {preview.Remark}");
            return [];
        }

        if (sound.Count > 0)
        {
            sound.AddRange(new double[(int)(Pause * rate)]);
        }

        lines.Row(
            Show.Text(
                $"  {(double)sound.Count / rate, 5:0.0} s  {name, -12}{preview.PlayingFrequency!.Value.Hertz, 7:0.0} Hz, resonance {preview.Resonance.Frequency.Hertz:0.0} Hz, {preview.SoundPressure.Pascals:0.00} Pa at 1 m"
            )
        );
        foreach (var sample in preview.Samples.Span)
        {
            sound.Add(Math.Clamp(sample, -1, 1));
        }

        return preview.Warnings;
    }
}
