namespace AirColumn.Plots.Drawing;

/// <summary>An item of a study in a picture.</summary>
internal readonly record struct StudyPoint(double X, double Y, double Colour)
{
    /// <summary>The items that have all quantities.</summary>
    public static List<StudyPoint> Of(StudyQuantity across, StudyQuantity up, StudyQuantity? colour)
    {
        ArgumentNullException.ThrowIfNull(across);
        ArgumentNullException.ThrowIfNull(up);
        if (across.Count != up.Count || (colour is not null && colour.Count != up.Count))
        {
            throw new ArgumentException(
                $"There are {across.Count} values across and {up.Count} up{(colour is null ? "" : $", and {colour.Count} for colours")}; give the same number of each.",
                nameof(up)
            );
        }

        var items = new List<StudyPoint>();
        for (var i = 0; i < up.Count; i++)
        {
            var item = new StudyPoint(across.Values[i], up.Values[i], colour is null ? 0 : colour.Values[i]);
            if (double.IsFinite(item.X) && double.IsFinite(item.Y) && double.IsFinite(item.Colour))
            {
                items.Add(item);
            }
        }

        return items.Count > 0
            ? items
            : throw new ArgumentException("No item has a number of each quantity.", nameof(up));
    }

    /// <summary>Those of which none is better in one and not worse in the other, from left to right.</summary>
    public static List<StudyPoint> Front(List<StudyPoint> items)
    {
        var front = new List<StudyPoint>();
        foreach (var item in items.OrderBy(item => item.X).ThenBy(item => item.Y))
        {
            if (front.Count == 0 || item.Y < front[^1].Y)
            {
                front.Add(item);
            }
        }

        return front;
    }
}
