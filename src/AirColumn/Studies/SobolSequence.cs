namespace AirColumn.Studies;

/// <summary>
/// The points of Sobol' (sobol1967) in the order of Gray codes (antonov1979), with the direction numbers of joe2008. Each is had at once.
/// </summary>
internal static class SobolSequence
{
    /// <summary>How many coordinates there are.</summary>
    public const int Dimensions = 32;

    /// <summary>How many binary digits a coordinate has.</summary>
    public const int Bits = 52;

    // Of each coordinate but the first: the inner coefficients a of its primitive polynomial as binary digits, and the first m. The degree is
    // the number of these. Published as new-joe-kuo-6.21201, copyright 2008 Frances Y. Kuo and Stephen Joe, for use with acknowledgement.
    private static readonly (int A, int[] M)[] Numbers =
    [
        (0, [1]),
        (1, [1, 3]),
        (1, [1, 3, 1]),
        (2, [1, 1, 1]),
        (1, [1, 1, 3, 3]),
        (4, [1, 3, 5, 13]),
        (2, [1, 1, 5, 5, 17]),
        (4, [1, 1, 5, 5, 5]),
        (7, [1, 1, 7, 11, 19]),
        (11, [1, 1, 5, 1, 1]),
        (13, [1, 1, 1, 3, 11]),
        (14, [1, 3, 5, 5, 31]),
        (1, [1, 3, 3, 9, 7, 49]),
        (13, [1, 1, 1, 15, 21, 21]),
        (16, [1, 3, 1, 13, 27, 49]),
        (19, [1, 1, 1, 15, 7, 5]),
        (22, [1, 3, 1, 15, 13, 25]),
        (25, [1, 1, 5, 5, 19, 61]),
        (1, [1, 3, 7, 11, 23, 15, 103]),
        (4, [1, 3, 7, 13, 13, 15, 69]),
        (7, [1, 1, 3, 13, 7, 35, 63]),
        (8, [1, 3, 5, 9, 1, 25, 53]),
        (14, [1, 3, 1, 13, 9, 35, 107]),
        (19, [1, 3, 1, 5, 27, 61, 31]),
        (21, [1, 1, 5, 11, 19, 41, 61]),
        (28, [1, 3, 5, 3, 3, 13, 69]),
        (31, [1, 1, 7, 13, 1, 19, 1]),
        (32, [1, 3, 7, 5, 13, 19, 59]),
        (37, [1, 1, 3, 9, 25, 29, 41]),
        (41, [1, 3, 5, 13, 23, 1, 55]),
        (42, [1, 3, 7, 3, 13, 59, 17]),
    ];

    private static readonly ulong[][] Directions =
    [
        .. Enumerable.Range(0, Dimensions).Select(dimension => DirectionsOf(dimension)),
    ];

    /// <summary>A coordinate of a point, as a whole number of 2⁻⁵².</summary>
    /// <param name="index">Which point: 0 is the first, whose coordinates are all 0.</param>
    /// <param name="dimension">Which coordinate, from 0.</param>
    public static ulong At(long index, int dimension)
    {
        var directions = Directions[dimension];
        var x = 0UL;
        var digit = 0;
        for (var gray = index ^ (index >> 1); gray != 0; gray >>= 1, digit++)
        {
            if ((gray & 1) != 0)
            {
                x ^= directions[digit];
            }
        }

        return x;
    }

    // v = m/2^i, and the recurrence of the polynomial beyond the first.
    private static ulong[] DirectionsOf(int dimension)
    {
        var v = new ulong[Bits];
        var (a, m) = dimension == 0 ? (0, []) : Numbers[dimension - 1];
        for (var i = 0; i < Bits; i++)
        {
            if (dimension == 0 || i < m.Length)
            {
                v[i] = (dimension == 0 ? 1UL : (ulong)m[i]) << (Bits - 1 - i);
                continue;
            }

            v[i] = v[i - m.Length] ^ (v[i - m.Length] >> m.Length);
            for (var k = 1; k < m.Length; k++)
            {
                if (((a >> (m.Length - 1 - k)) & 1) != 0)
                {
                    v[i] ^= v[i - k];
                }
            }
        }

        return v;
    }
}
