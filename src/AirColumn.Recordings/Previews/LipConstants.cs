namespace AirColumn.Recordings.Previews;

/// <summary>A <see cref="LipModel"/> in SI units: h₀ in m, w in m, Q, μ in kg/m².</summary>
internal readonly record struct LipConstants(
    double Opening,
    double Width,
    double Quality,
    double MassPerArea
);
