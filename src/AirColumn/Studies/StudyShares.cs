namespace AirColumn.Studies;

/// <summary>The effect of each parameter of a finished study on its answers.</summary>
public static class StudyShares
{
    private const int LeastOfGroup = 8;
    private const int MostGroups = 64;

    /// <summary>
    /// The share of the variance of an answer that is due to one parameter alone, from the points of a study as they are: the first-order index
    /// of Sobol', 0 to 1. The shares of independent parameters add up to 1 if each acts by itself, and to less if they act together.
    /// </summary>
    /// <remarks>
    /// Items are grouped by the value of the parameter. The variance of the means of the groups, minus their chance variation, is compared
    /// with the variance of all items (after plischke2013). For drawn values the error of the share is a few hundredths with a thousand
    /// items, and less with more; a negative result becomes 0. For values in steps the share is exact, since a study computes every
    /// combination of them.
    /// </remarks>
    /// <param name="parameter">The values of the parameter.</param>
    /// <param name="answer">The answers, in the same order; pairs with a NaN are skipped.</param>
    /// <returns>The share; NaN if fewer than 32 items have both numbers, or if the answer does not vary.</returns>
    /// <exception cref="ArgumentException">There are not as many answers as values.</exception>
    public static double FirstOrder(ReadOnlySpan<double> parameter, ReadOnlySpan<double> answer)
    {
        if (parameter.Length != answer.Length)
        {
            throw new ArgumentException(
                $"There are {parameter.Length} values of the parameter and {answer.Length} answers; give the same number of each.",
                nameof(answer)
            );
        }

        var items = new List<(double Parameter, double Answer)>();
        for (var i = 0; i < answer.Length; i++)
        {
            if (double.IsFinite(parameter[i]) && double.IsFinite(answer[i]))
            {
                items.Add((parameter[i], answer[i]));
            }
        }

        if (items.Count < 4 * LeastOfGroup)
        {
            return double.NaN;
        }

        items.Sort((one, other) => one.Parameter.CompareTo(other.Parameter));
        var values =
            1 + items.Zip(items.Skip(1)).Count(pair => pair.First.Parameter != pair.Second.Parameter);
        var isInSteps = values * LeastOfGroup <= items.Count;
        var size = isInSteps
            ? 1
            : Math.Max(LeastOfGroup, items.Count / Math.Min(MostGroups, (int)Math.Sqrt(items.Count)));
        var mean = items.Average(item => item.Answer);
        var total = items.Sum(item => Square(item.Answer - mean));
        var (between, within, groups) = (0.0, 0.0, 0);
        for (var begin = 0; begin < items.Count; groups++)
        {
            // Equal values stay in one group.
            var end = Math.Min(begin + size, items.Count);
            while (end < items.Count && items[end].Parameter == items[end - 1].Parameter)
            {
                end++;
            }

            var group = items[begin..end];
            var own = group.Average(item => item.Answer);
            between += group.Count * Square(own - mean);
            within += group.Sum(item => Square(item.Answer - own));
            begin = end;
        }

        // Of the sum between groups as many times the variance within them is chance as there are groups but one. Not in steps: at each of these all
        // others take the same values.
        var chance = !isInSteps && items.Count > groups ? (groups - 1) * within / (items.Count - groups) : 0;
        return total > 0 ? Math.Clamp((between - chance) / total, 0, 1) : double.NaN;
    }

    private static double Square(double value) => value * value;
}
