namespace AirColumn.Documents;

/// <summary>What a document has a place for.</summary>
internal static class DocumentLimits
{
    /// <summary>Refuses what could not be written and read again, or not computed.</summary>
    public static void RequireHeld(
        Bore bore,
        ColumnOptions options,
        string? name,
        IReadOnlyList<NamedFingering> fingerings
    )
    {
        NameText.RequireWritable(name);
        RequireSize(bore);
        RequireNames(bore);
        RequireRadiation(bore, options);
        RequireFingerings(bore, options, fingerings);
    }

    private static void RequireSize(Bore bore)
    {
        RequireFew(bore, one => one.Sections.Count, "sections");
        RequireFew(
            bore,
            one => one.Sections.OfType<ProfileSection>().Sum(profile => profile.Positions.Count),
            "points of profiles"
        );
        RequireFew(bore, one => one.Holes.Count + one.Branches.Count, "holes and branches");
    }

    private static void RequireFew(Bore bore, Func<Bore, int> count, string what)
    {
        var total = Bores(bore).Sum(one => (long)count(one));
        if (total > BoreReader.Most)
        {
            throw new ArgumentException(
                $"The bore has {Require.Show(total, "")} {what}, branches included; a document holds at most "
                    + $"{Require.Show(BoreReader.Most, "")}.",
                nameof(bore)
            );
        }
    }

    private static void RequireNames(Bore bore)
    {
        foreach (var one in Bores(bore))
        {
            foreach (var hole in one.Holes)
            {
                NameText.RequireWritable(hole.Name, nameof(bore));
            }

            foreach (var branch in one.Branches)
            {
                NameText.RequireWritable(branch.Name, nameof(bore));
            }
        }
    }

    private static void RequireRadiation(Bore bore, ColumnOptions options)
    {
        if (options.Radiation.Impedance is not null)
        {
            throw new ArgumentException(
                "The radiation of the far end is a function in the program; a document cannot hold code. Name a radiation model.",
                nameof(options)
            );
        }

        if (bore.FarEnd is OpenEnd or BaffledEnd)
        {
            _ = options.Radiation.Of(bore.FarEnd, bore.Sections[^1].OutletDiameter.Meters / 2);
        }
    }

    private static void RequireFingerings(
        Bore bore,
        ColumnOptions options,
        IEnumerable<NamedFingering> fingerings
    )
    {
        _ = options.Fingering.ForHoles(bore.Holes.Count, nameof(options));
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var fingering in fingerings)
        {
            ArgumentNullException.ThrowIfNull(fingering, nameof(fingerings));
            _ = fingering.Holes.ForHoles(bore.Holes.Count, nameof(fingerings));
            if (!names.Add(fingering.Name))
            {
                throw new ArgumentException(
                    $"The fingering {Quote.Of(fingering.Name)} is given twice; give it once.",
                    nameof(fingerings)
                );
            }
        }
    }

    // Branches may have branches.
    private static IEnumerable<Bore> Bores(Bore bore) =>
        bore.Branches.SelectMany(branch => Bores(branch.Bore)).Prepend(bore);
}
