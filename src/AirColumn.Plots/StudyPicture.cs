using AirColumn.Plots.Drawing;
using AirColumn.Studies;

namespace AirColumn.Plots;

/// <summary>Pictures of a study: which parameters matter, a map of a design space, the best choices for two goals.</summary>
public static class StudyPicture
{
    private const int MostRows = 20;

    /// <summary>The share of each parameter alone in the variance of an answer, as bars, the largest first.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="parameters">The parameters, at least one, for the same items; the largest twenty are shown.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentException">There is no parameter, the lists differ in length, or no share can be computed.</exception>
    public static Picture Shares(StudyQuantity answer, IReadOnlyList<StudyQuantity> parameters)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(parameters);
        var shares = parameters
            .Select(one => (one.Name, Share: StudyShares.FirstOrder(one.Values, answer.Values)))
            .Where(one => double.IsFinite(one.Share))
            .OrderByDescending(one => one.Share)
            .Take(MostRows)
            .ToList();
        if (shares.Count == 0)
        {
            throw new ArgumentException(
                "No share can be told; give at least 1 parameter, 32 items and an answer that varies.",
                nameof(parameters)
            );
        }

        return new Picture(
            new Scene(
                $"What moves the {answer.Name}: {string.Join("; ", shares.Select(s => $"{s.Name} {Percent(s.Share)}"))}.",
                look => look.Top + (5.2f + 2.9f * shares.Count) * look.Text,
                page => ShareBars.Draw(page, shares, answer.Name)
            )
        );
    }

    /// <summary>
    /// A map of items: two quantities give the place of each item, a third gives its colour, from light (least) to dark (most).
    /// </summary>
    /// <param name="across">The quantity of the horizontal axis.</param>
    /// <param name="up">The quantity of the vertical axis.</param>
    /// <param name="colour">The quantity shown by colour.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentException">The lists differ in length, or no item has all three numbers.</exception>
    public static Picture Map(StudyQuantity across, StudyQuantity up, StudyQuantity colour)
    {
        ArgumentNullException.ThrowIfNull(colour);
        var items = StudyPoint.Of(across, up, colour);
        var (least, most) = (items.Min(item => item.Colour), items.Max(item => item.Colour));
        return new Picture(
            new Scene(
                $"{colour.Name} over {across.Name} and {up.Name}: {items.Count} items, {Numbers.Plain(least, 4)} (light) to {Numbers.Plain(most, 4)} (dark).",
                look => look.Top + 30 * look.Text,
                page => StudyMap.Draw(page, items, (across.Name, up.Name, colour.Name), (least, most))
            )
        );
    }

    /// <summary>
    /// All items by two goals; a smaller value is better for both goals. The front is in colour: the items that no other item beats in one
    /// goal without being worse in the other.
    /// </summary>
    /// <param name="across">One goal.</param>
    /// <param name="up">The other goal.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentException">The lists differ in length, or no item has both numbers.</exception>
    public static Picture Front(StudyQuantity across, StudyQuantity up)
    {
        var items = StudyPoint.Of(across, up, null);
        var front = StudyPoint.Front(items);
        return new Picture(
            new Scene(
                $"{up.Name} against {across.Name}: {items.Count} items, {front.Count} of them on the front, from "
                    + $"{Numbers.Plain(front[0].X, 4)} and {Numbers.Plain(front[0].Y, 4)} to {Numbers.Plain(front[^1].X, 4)} and {Numbers.Plain(front[^1].Y, 4)}.",
                look => look.Top + 30 * look.Text,
                page => StudyMap.DrawFront(page, items, front, (across.Name, up.Name))
            )
        );
    }

    private static string Percent(double share) => $"{Numbers.Fixed(100 * share, 0)} %";
}
