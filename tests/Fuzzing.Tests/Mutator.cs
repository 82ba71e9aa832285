namespace Fuzzing.Tests;

/// <summary>
/// Makes inputs that are nearly right: sound examples, cut, joined, repeated, with bytes changed and words put in that mean something.
/// The same seed gives the same inputs.
/// </summary>
internal sealed class Mutator(int seed, IReadOnlyList<byte[]> examples, IReadOnlyList<byte[]> words)
{
    // Far beyond any example, and short enough for a million of them.
    private const int Longest = 4000;

    private readonly Random random = new(seed);

    public byte[] Next()
    {
        var bytes = new List<byte>(Pick(examples));
        for (var changes = 1 + random.Next(6); changes > 0; changes--)
        {
            Change(bytes);
        }

        return [.. bytes.Take(Longest)];
    }

    private void Change(List<byte> bytes)
    {
        var at = random.Next(bytes.Count + 1);
        var length = random.Next(1 + Math.Min(12, bytes.Count - at));
        switch (random.Next(8))
        {
            case 0:
                bytes.RemoveRange(at, length);
                break;
            case 1:
                bytes.RemoveRange(at, bytes.Count - at);
                break;
            case 2:
                bytes.InsertRange(at, bytes.GetRange(at, length));
                break;
            case 3:
                bytes.RemoveRange(at, length);
                bytes.InsertRange(at, Pick(words));
                break;
            case 4:
                bytes.InsertRange(at, Pick(words));
                break;
            case 5:
                var other = Pick(examples);
                var from = random.Next(other.Length + 1);
                bytes.InsertRange(at, other.Skip(from).Take(random.Next(60)));
                break;
            case 6 when at < bytes.Count:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            default:
                bytes.Insert(at, (byte)random.Next(256));
                break;
        }
    }

    private byte[] Pick(IReadOnlyList<byte[]> from) => from[random.Next(from.Count)];
}
