using AirColumn.Documents;

namespace WebService;

/// <summary>What was asked for, and what it rests on.</summary>
internal sealed record Answer<T>(Provenance Provenance, T Result);
