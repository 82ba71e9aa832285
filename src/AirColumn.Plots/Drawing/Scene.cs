namespace AirColumn.Plots.Drawing;

/// <summary>What a picture draws, at whatever size.</summary>
/// <param name="Description">What it shows, in words.</param>
/// <param name="NaturalHeight">The height that suits it, CSS pixels.</param>
/// <param name="Draw">Draws it on a page.</param>
internal sealed record Scene(string Description, Func<Look, double> NaturalHeight, Action<Page> Draw);
