namespace AirColumn;

/// <summary>The wall of a bore at one place: radius a (m), its slope a' = da/dx and a'' (1/m).</summary>
internal readonly record struct Wall(double Radius, double Slope, double Curvature);
