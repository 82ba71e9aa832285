namespace AirColumn.Studies;

/// <summary>
/// Random numbers as a function of a counter and a key, without a state: Philox4x64-10 (source: salmon2011). Any of them is had at once, in
/// any order, on any machine.
/// </summary>
internal static class Philox
{
    private const int Rounds = 10;

    // Multipliers, and what the key grows by each round: table 2 of the source.
    private const ulong M0 = 0xD2E7470EE14C6C93;
    private const ulong M1 = 0xCA5A826395121157;
    private const ulong W0 = 0x9E3779B97F4A7C15;
    private const ulong W1 = 0xBB67AE8584CAA73B;

    /// <summary>Four random words.</summary>
    public static (ulong, ulong, ulong, ulong) Block(
        (ulong C0, ulong C1, ulong C2, ulong C3) counter,
        (ulong K0, ulong K1) key
    )
    {
        var (c0, c1, c2, c3) = counter;
        var (k0, k1) = key;
        for (var round = 0; round < Rounds; round++)
        {
            var high0 = Math.BigMul(M0, c0, out var low0);
            var high1 = Math.BigMul(M1, c2, out var low1);
            (c0, c1, c2, c3) = (high1 ^ c1 ^ k0, low1, high0 ^ c3 ^ k1, low0);
            (k0, k1) = (unchecked(k0 + W0), unchecked(k1 + W1));
        }

        return (c0, c1, c2, c3);
    }

    /// <summary>One random word.</summary>
    /// <param name="seed">Another for another study.</param>
    /// <param name="use">The purpose of the word; another for an independent draw.</param>
    /// <param name="index">Which point.</param>
    /// <param name="dimension">Which coordinate of it.</param>
    public static ulong Word(ulong seed, ulong use, ulong index, int dimension)
    {
        var (a, b, c, d) = Block((index, (ulong)(dimension / 4), use, 0), (seed, 0));
        return (dimension % 4) switch
        {
            0 => a,
            1 => b,
            2 => c,
            _ => d,
        };
    }
}
