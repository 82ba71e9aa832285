namespace AirColumn.Acoustics.Radiation;

/// <summary>What an open end sends back as a function of ka, up to where, and what a user should know of it.</summary>
internal sealed record OpenEndModel(Func<double, EndReflection> At, double HighestKa, string? Warning = null)
{
    /// <summary>The same end with a tapering bore behind it.</summary>
    public OpenEndModel Behind(TaperedMouth mouth) => this with { At = ka => mouth.Of(At(ka), ka) };
}
