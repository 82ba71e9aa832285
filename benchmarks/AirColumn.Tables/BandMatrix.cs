using Complex = System.Numerics.Complex;

namespace AirColumn.Tables;

/// <summary>A symmetric matrix whose entries lie near its diagonal; complex ones are symmetric, not Hermitian.</summary>
internal sealed class BandMatrix(int size, int width)
{
    private readonly Complex[] entries = new Complex[size * (width + 1)]; // row i: columns i − width to i

    public int Size => size;

    public Complex this[int row, int column]
    {
        get
        {
            var (i, j) = row < column ? (column, row) : (row, column);
            return i - j > width ? Complex.Zero : entries[i * (width + 1) + j - i + width];
        }
    }

    public void Add(int row, int column, Complex value)
    {
        if (row >= column)
        {
            entries[row * (width + 1) + column - row + width] += value;
        }
    }

    /// <summary>This and so many times another.</summary>
    public BandMatrix Plus(Complex factor, BandMatrix other)
    {
        var sum = new BandMatrix(size, width);
        for (var i = 0; i < entries.Length; i++)
        {
            sum.entries[i] = entries[i] + factor * other.entries[i];
        }

        return sum;
    }

    /// <summary>This times the transpose of a full matrix.</summary>
    public Complex[,] TimesTransposeOf(Complex[,] full)
    {
        var product = new Complex[size, size];
        for (var i = 0; i < size; i++)
        {
            for (var k = Math.Max(0, i - width); k < Math.Min(size, i + width + 1); k++)
            {
                var factor = this[i, k];
                for (var j = 0; j < size; j++)
                {
                    product[i, j] += factor * full[j, k];
                }
            }
        }

        return product;
    }

    /// <summary>Adds so many times the inverse to the lower triangle of a full matrix.</summary>
    public void AddInverse(Complex factor, Complex[,] into)
    {
        // L·D·Lᵀ, L in the place of the entries below the diagonal, 1/D on it.
        var l = (Complex[])entries.Clone();
        var w = width + 1;
        for (var i = 0; i < size; i++)
        {
            for (var j = Math.Max(0, i - width); j < i; j++)
            {
                var sum = l[i * w + j - i + width];
                for (var k = Math.Max(0, i - width); k < j; k++)
                {
                    sum -= l[i * w + k - i + width] * l[j * w + k - j + width];
                }

                l[i * w + j - i + width] = sum;
            }

            var pivot = l[i * w + width];
            for (var j = Math.Max(0, i - width); j < i; j++)
            {
                var scaled = l[i * w + j - i + width] * l[j * w + width];
                pivot -= scaled * l[i * w + j - i + width];
                l[i * w + j - i + width] = scaled;
            }

            l[i * w + width] = 1 / pivot;
        }

        var x = new Complex[size];
        for (var column = 0; column < size; column++)
        {
            x.AsSpan(column).Clear();
            x[column] = factor;
            for (var i = column + 1; i < size; i++)
            {
                for (var k = Math.Max(column, i - width); k < i; k++)
                {
                    x[i] -= l[i * w + k - i + width] * x[k];
                }
            }

            for (var i = size - 1; i >= column; i--)
            {
                x[i] *= l[i * w + width];
                for (var k = i + 1; k < Math.Min(size, i + w); k++)
                {
                    x[i] -= l[k * w + i - k + width] * x[k];
                }

                into[i, column] += x[i];
            }
        }
    }
}
