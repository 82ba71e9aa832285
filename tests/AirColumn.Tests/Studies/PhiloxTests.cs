using AirColumn.Studies;

namespace AirColumn.Tests.Studies;

public class PhiloxTests
{
    // Known answers of Philox4x64-10 from the authors' library Random123, file kat_vectors.
    [Fact]
    public void Known_answers()
    {
        Assert.Equal(
            (0x16554d9eca36314cUL, 0xdb20fe9d672d0fdcUL, 0xd7e772cee186176bUL, 0x7e68b68aec7ba23bUL),
            Philox.Block((0UL, 0UL, 0UL, 0UL), (0UL, 0UL))
        );
        const ulong All = ulong.MaxValue;
        Assert.Equal(
            (0x87b092c3013fe90bUL, 0x438c3c67be8d0224UL, 0x9cc7d7c69cd777b6UL, 0xa09caebf594f0ba0UL),
            Philox.Block((All, All, All, All), (All, All))
        );
        Assert.Equal(
            (0xa528f45403e61d95UL, 0x38c72dbd566e9788UL, 0xa5a1610e72fd18b5UL, 0x57bd43b5e52b7fe6UL),
            Philox.Block(
                (0x243f6a8885a308d3UL, 0x13198a2e03707344UL, 0xa4093822299f31d0UL, 0x082efa98ec4e6c89UL),
                (0x452821e638d01377UL, 0xbe5466cf34e90c6cUL)
            )
        );
    }

    // Each coordinate has its own word of its own block.
    [Fact]
    public void Words_are_those_of_blocks()
    {
        var (a, b, c, d) = Philox.Block((7, 1, 2, 0), (5, 0));
        Assert.Equal([a, b, c, d], Enumerable.Range(4, 4).Select(i => Philox.Word(5, 2, 7, i)));
    }
}
