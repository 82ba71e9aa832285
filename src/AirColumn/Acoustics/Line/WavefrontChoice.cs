using AirColumn.Bores;

namespace AirColumn.Acoustics.Line;

/// <summary>Which wave fronts a bore needs.</summary>
internal static class WavefrontChoice
{
    // Slope, and change of slope within a radius, up to which curved fronts stay within some tenths of a cent in the tubes that were compared.
    private const double Steepest = 0.3;
    private const double Sharpest = 0.4;

    public static Wavefronts For(Bore bore, ColumnOptions options) =>
        options.Radiation == RadiationModel.Exact && (HasStepsTogether(bore) || IsSteep(bore))
            ? Wavefronts.Multimodal
            : Wavefronts.Curved;

    // Steps that see each other's field, or the mouth's: nearer than the radius of what lies between.
    private static bool HasStepsTogether(Bore bore)
    {
        var isOpen = bore.FarEnd is OpenEnd or BaffledEnd;
        var apart = double.PositiveInfinity; // from the last step, m
        for (var i = 1; i <= bore.Sections.Count; i++)
        {
            var before = bore.Sections[i - 1];
            apart += before.LengthMetres;
            if (i == bore.Sections.Count)
            {
                return isOpen && apart < before.WallAt(before.LengthMetres).Radius;
            }

            if (Bore.IsStep(before, bore.Sections[i]))
            {
                if (apart < before.WallAt(before.LengthMetres).Radius)
                {
                    return true;
                }

                apart = 0;
            }
        }

        return false;
    }

    private static bool IsSteep(Bore bore)
    {
        // Places along smooth parts, and their slopes.
        var places = new List<(double X, double Slope)>();
        var first = 0;
        var x = 0.0;
        foreach (var section in bore.Sections)
        {
            foreach (var part in section.SmoothParts)
            {
                if (
                    Turns(part.WallAt(0), x)
                    || Turns(part.WallAt(part.LengthMetres / 2), x + part.LengthMetres / 2)
                    || Turns(part.WallAt(part.LengthMetres), x + part.LengthMetres)
                )
                {
                    return true;
                }

                x += part.LengthMetres;
            }
        }

        return false;

        bool Turns(in Wall wall, double at)
        {
            while (first < places.Count && places[first].X < at - wall.Radius)
            {
                first++;
            }

            places.Add((at, wall.Slope));
            var steep = Math.Abs(wall.Slope) > Steepest;
            for (var i = first; i < places.Count && !steep; i++)
            {
                steep = Math.Abs(places[i].Slope - wall.Slope) > Sharpest;
            }

            return steep;
        }
    }
}
