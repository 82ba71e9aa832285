namespace AirColumn.Plots.Drawing;

/// <summary>Shares of a whole as bars.</summary>
internal static class ShareBars
{
    public static void Draw(Page page, List<(string Name, double Share)> shares, string of)
    {
        page.Begin(
            $"What moves the {of}",
            $"together {Numbers.Fixed(100 * shares.Sum(one => one.Share), 0)} % by each alone; the rest by several at once, or by chance"
        );
        NamedBars.Draw(
            page,
            "Share of the variance, %",
            [
                .. shares.Select(one => new NamedBar(
                    one.Name,
                    100 * one.Share,
                    $"{Numbers.Fixed(100 * one.Share, 0)} %"
                )),
            ],
            most => Math.Max(1, Math.Ceiling(most / 10) * 10),
            "100 %"
        );
    }
}
