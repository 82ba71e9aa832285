using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics;

/// <summary>What a column is made of.</summary>
internal readonly record struct ColumnParts(Bore Bore, AirProfile Air, ColumnOptions Options);
