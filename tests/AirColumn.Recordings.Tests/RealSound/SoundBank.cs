using System.Text;
using System.Text.RegularExpressions;

namespace AirColumn.Recordings.Tests.RealSound;

/// <summary>The loops of the wind instruments in a bank of sounds (format: SoundFont 2.04, chunks smpl and shdr), as Debian's fluid-soundfont-gm installs it.</summary>
internal static partial class SoundBank
{
    public const string File = "/usr/share/sounds/sf2/FluidR3_GM.sf2";
    private const int HeaderBytes = 46;
    private const string Semitones = "C D EF G A B";

    // Named an octave below its neighbour D7, a tone above it.
    private const string Misnamed = "Recorder C6";

    private static readonly string[] Instruments =
    [
        "Flute",
        "Piccolo",
        "Recorder",
        "Clarinet",
        "Oboe",
        "Bassoon",
        "English Horn",
        "French Horns",
        "trombone",
        "Tuba",
    ];

    public static IEnumerable<Wind> Winds()
    {
        using var reader = new BinaryReader(System.IO.File.OpenRead(File));
        var chunks = new Dictionary<string, (long From, int Length)>();
        Walk(reader, reader.BaseStream.Length, chunks);
        reader.BaseStream.Position = chunks["shdr"].From;
        var headers = reader.ReadBytes(chunks["shdr"].Length);
        // The last header only ends the list.
        for (var i = 0; i + HeaderBytes < headers.Length; i += HeaderBytes)
        {
            var name = Encoding.Latin1.GetString(headers, i, 20).Split('\0')[0].Trim();
            var instrument = Instruments.FirstOrDefault(each =>
                name.Contains(each, StringComparison.Ordinal)
            );
            var (from, to) = (Number(28), Number(32));
            if (
                instrument is null
                || name == Misnamed
                || to <= from + 16
                || Note().Match(name) is not { Success: true } note
            )
            {
                continue;
            }

            reader.BaseStream.Position = chunks["smpl"].From + 2L * from;
            var loop = new double[to - from];
            for (var n = 0; n < loop.Length; n++)
            {
                loop[n] = reader.ReadInt16() / 32768.0;
            }

            var semitone =
                Semitones.IndexOf(note.Groups[1].Value, StringComparison.Ordinal)
                + (
                    note.Groups[2].Value switch
                    {
                        "#" => 1,
                        "b" => -1,
                        _ => 0,
                    }
                )
                + 12 * (note.Groups[3].Value[0] - '4');
            yield return new Wind(
                name,
                instrument,
                440 * Math.Pow(2, (semitone - 9) / 12.0),
                Number(36),
                loop
            );

            int Number(int at) => BitConverter.ToInt32(headers, i + at);
        }
    }

    private static void Walk(BinaryReader reader, long end, Dictionary<string, (long, int)> chunks)
    {
        while (reader.BaseStream.Position < end)
        {
            var id = Encoding.ASCII.GetString(reader.ReadBytes(4));
            var length = reader.ReadInt32();
            var from = reader.BaseStream.Position;
            if (id is "RIFF" or "LIST")
            {
                reader.ReadBytes(4);
                Walk(reader, from + length, chunks);
            }
            else
            {
                chunks[id] = (from, length);
            }

            reader.BaseStream.Position = from + length + length % 2;
        }
    }

    [GeneratedRegex("([A-G])([#b]?)([0-9])")]
    private static partial Regex Note();
}

/// <summary>A recorded note: as named, and its loop.</summary>
internal sealed record Wind(string Name, string Instrument, double NamedHertz, double Rate, double[] Loop);

/// <summary>A test that needs the bank; skipped where it is not installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class SoundBankFactAttribute : FactAttribute
{
    public SoundBankFactAttribute()
    {
        if (!System.IO.File.Exists(SoundBank.File))
        {
            Skip = $"{SoundBank.File} is not installed; on Debian it comes with fluid-soundfont-gm.";
        }
    }
}
