using AirColumn.Tests.Design;

namespace AirColumn.Accuracy;

/// <summary>Bores found again from measurements that were made of known ones.</summary>
internal static class BoreFitChapter
{
    private const int Fits = 5;

    public static Chapter Make() =>
        new(
            "Bores from measurements",
            "The bores are drone tubes (1 to 1.6 m, 30 to 64 mm) and horns (0.9 to 1.4 m, 11 to 60 mm). Their walls are off by a smooth random "
                + "function (0.3 and 0.15 mm root mean square), and the air is off by 0.3 K. Their reflectance is computed with radial modes, every 10 "
                + "Hz, with noise of 1 percent. The fit carries curved wave fronts and cones of 20 mm. Above a third of the cut-on of a horn's "
                + "bell, curved fronts "
                + "are less accurate than the measurement, and the radii are off by more than their ranges say.",
            [
                .. Found("drone tubes", false, 4000, 0.05),
                .. Found("drone tubes", false, 2000, 0.1),
                .. Found("horns", true, 2000, 0.1),
                .. Found("horns", true, 4000, null),
            ],
            []
        );

    private static IEnumerable<Quantity> Found(string what, bool isHorn, double hertz, double? allowed)
    {
        var errors = Enumerable
            .Range(1, Fits)
            .AsParallel()
            .AsOrdered()
            .Select(seed =>
            {
                var made = new SyntheticMeasurement(seed, isHorn, hertz, Wavefronts.Multimodal);
                return made.Errors(made.Fit());
            })
            .ToList();
        var range = FormattableString.Invariant($"{Fits} {what}, up to {hertz / 1000} kHz");
        yield return new(
            "Radii from the reflectance, root mean square error",
            "the bores measured",
            range,
            "mm",
            [.. errors.Select(error => error.RootMeanSquare)],
            allowed
        );
        yield return new(
            "Share of radii outside their 95 percent range",
            "the bores measured",
            range,
            "",
            [1 - (double)errors.Sum(error => error.Inside) / errors.Sum(error => error.Count)],
            allowed is null ? null : 0.1
        );
    }
}
