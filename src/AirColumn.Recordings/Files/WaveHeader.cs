using System.Buffers.Binary;

namespace AirColumn.Recordings.Files;

/// <summary>
/// What a WAV file says of its lengths. A recorder that lost power or disk leaves the length of the sound at 0 or at all ones, or larger
/// than what is there: then what is there is the sound.
/// </summary>
internal sealed class WaveHeader
{
    private const int MostChunks = 1000;
    private const int LengthOfAllAt = 4;

    private readonly long lengthAt; // of the four bytes that say how long the data is; 0 if they are right
    private readonly uint length;

    public WaveHeader(Stream stream)
    {
        var header = (stackalloc byte[12]);
        stream.Position = 0;
        if (
            stream.Length < 20
            || stream.ReadAtLeast(header, 12, false) < 12
            || !header[..4].SequenceEqual("RIFF"u8)
        )
        {
            return;
        }

        var chunk = (stackalloc byte[8]);
        for (var (at, i) = (12L, 0); at + 8 <= stream.Length && i < MostChunks; i++)
        {
            stream.Position = at;
            stream.ReadExactly(chunk);
            var said = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            if (chunk[..4].SequenceEqual("data"u8))
            {
                var there = stream.Length - at - 8;
                if ((said == 0 && there > 0) || said > there)
                {
                    (lengthAt, length) = (at + 4, (uint)Math.Min(there, uint.MaxValue - 1));
                    Warning = said is 0 or uint.MaxValue
                        ? "The header was never completed: the recording was broken off. Everything after the header is read as sound."
                        : "The file is shorter than its header says: the recording was cut off. The part that is there is used.";
                }

                return;
            }

            at += 8 + said + (said & 1);
        }
    }

    /// <summary>What a user should know; null if the lengths are right.</summary>
    public string? Warning { get; }

    // Of all that follows it; left at 0 with that of the sound, it would hide all chunks.
    private static uint LengthOfAll(Stream stream) => (uint)Math.Min(stream.Length - 8, uint.MaxValue - 1);

    /// <summary>The file with its lengths as they are, where that of its data is not.</summary>
    public Stream Mended(Stream stream)
    {
        stream.Position = 0;
        return lengthAt == 0
            ? stream
            : new MendedStream(stream, (LengthOfAllAt, LengthOfAll(stream)), (lengthAt, length));
    }
}
