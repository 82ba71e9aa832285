namespace AirColumn.Acoustics.Kernels;

/// <summary>The degree of a polynomial as a type, so that its steps are written out when the code is compiled.</summary>
internal interface IDegree
{
    static abstract int Value { get; }
}

internal readonly struct Degree5 : IDegree
{
    public static int Value => 5;
}

internal readonly struct Degree6 : IDegree
{
    public static int Value => 6;
}

internal readonly struct Degree7 : IDegree
{
    public static int Value => 7;
}

internal readonly struct Degree8 : IDegree
{
    public static int Value => 8;
}

internal readonly struct Degree9 : IDegree
{
    public static int Value => 9;
}

internal readonly struct Degree10 : IDegree
{
    public static int Value => 10;
}

internal readonly struct Degree11 : IDegree
{
    public static int Value => 11;
}

internal readonly struct Degree12 : IDegree
{
    public static int Value => 12;
}

internal readonly struct Degree14 : IDegree
{
    public static int Value => 14;
}
