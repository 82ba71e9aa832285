using AirColumn.Acoustics.Junctions;

namespace AirColumn.Acoustics.Line;

/// <summary>Steps of a bore that are near each other, with pipes between them and nothing else.</summary>
/// <param name="Interactions">What the neighbours do to each step.</param>
/// <param name="Sections">The section behind each step.</param>
internal sealed record StepCluster(StepInteraction[] Interactions, int[] Sections)
{
    /// <summary>Whether what is sent into a section from one end reaches the other: a pipe shorter than <see cref="StepChain.Reach"/> radii.</summary>
    public static bool IsShort(Section section) =>
        section is CylinderSection or BendSection
        && section.LengthMetres < StepChain.Reach * section.WallAt(0).Radius;

    /// <summary>Those of a bore.</summary>
    /// <param name="bore">The bore.</param>
    /// <param name="gasAt">What fills it at a place, m.</param>
    /// <param name="steps">What they do.</param>
    public static List<StepCluster> Of(Bore bore, Func<double, GasConstants> gasAt, StepStore steps)
    {
        var found = new List<StepCluster>();
        var (radii, lengths, behind) = (new List<double>(), new List<double>(), new List<int>());
        var (place, first) = (bore.Sections[0].LengthMetres, 0.0); // of the step at hand, and of the first of its cluster
        var between = 0.0; // how far the last step lies behind, through pipes of one radius
        var reaches = false;
        for (var i = 1; i < bore.Sections.Count; i++)
        {
            var (before, section) = (bore.Sections[i - 1], bore.Sections[i]);
            if (Bore.IsStep(before, section))
            {
                var radius = before.WallAt(before.LengthMetres).Radius;
                if (reaches)
                {
                    lengths.Add(between);
                }
                else
                {
                    Close();
                    first = place;
                    radii.Add(radius);
                }

                radii.Add(section.WallAt(0).Radius);
                behind.Add(i);
                (between, reaches) = (0, true);
            }

            place += section.LengthMetres;
            between += section.LengthMetres;
            reaches =
                reaches
                && section is CylinderSection or BendSection
                && between < StepChain.Reach * section.WallAt(0).Radius
                && !bore.HasOpening(place - section.LengthMetres, place);
        }

        Close();
        return found;

        void Close()
        {
            if (behind.Count > 1)
            {
                found.Add(new StepCluster(steps.Of(radii, lengths, gasAt(first)), [.. behind]));
            }

            radii.Clear();
            lengths.Clear();
            behind.Clear();
        }
    }

    /// <summary>Gives each step of the sections what its neighbours do to it, and takes that of others from it.</summary>
    public static void Join(Bore bore, IReadOnlyList<StepCluster> clusters, LineSection[] sections)
    {
        var wanted = new Dictionary<int, StepInteraction>();
        foreach (var cluster in clusters)
        {
            for (var i = 0; i < cluster.Sections.Length; i++)
            {
                wanted[cluster.Sections[i]] = cluster.Interactions[i];
            }
        }

        for (var i = 1; i < sections.Length; i++)
        {
            var neighbours = wanted.GetValueOrDefault(i);
            if (
                sections[i].Parts[0] is SeriesMass step
                && Bore.IsStep(bore.Sections[i - 1], bore.Sections[i])
                && !ReferenceEquals(step.Neighbours, neighbours)
            )
            {
                sections[i] = sections[i] with
                {
                    Parts = [step.Among(neighbours), .. sections[i].Parts[1..]],
                };
            }
        }
    }
}
