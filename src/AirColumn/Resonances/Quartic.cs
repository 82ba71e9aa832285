using System.Numerics;

namespace AirColumn.Resonances;

/// <summary>A complex polynomial of fourth degree in t through its values at t = −2, −1, 0, 1, 2.</summary>
internal readonly struct Quartic
{
    private readonly Complex c0;
    private readonly Complex c1;
    private readonly Complex c2;
    private readonly Complex c3;
    private readonly Complex c4;

    public Quartic(Complex a, Complex b, Complex m, Complex d, Complex e)
    {
        c0 = m;
        c1 = (a - 8 * b + 8 * d - e) / 12;
        c2 = (-a + 16 * b - 30 * m + 16 * d - e) / 24;
        c3 = (-a + 2 * b - 2 * d + e) / 12;
        c4 = (a - 4 * b + 6 * m - 4 * d + e) / 24;
    }

    public Complex At(Complex t) => c0 + t * (c1 + t * (c2 + t * (c3 + t * c4)));

    public Complex SlopeAt(Complex t) => c1 + t * (2 * c2 + t * (3 * c3 + t * 4 * c4));

    public Complex CurvatureAt(Complex t) => 2 * c2 + t * (6 * c3 + t * 12 * c4);
}
