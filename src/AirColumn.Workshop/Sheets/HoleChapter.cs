using System.Globalization;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>What a build sheet says of finger holes: where they are drilled, and what they sound.</summary>
internal static class HoleChapter
{
    public static void Add(HtmlPage page, TubeBuild build, Sizes sizes, CancellationToken cancellationToken)
    {
        var exact = build.Exact!;
        var words = new HoleWords(sizes);
        page.Heading(HoleWords.Title);
        if (BeforeDrilling(build, cancellationToken) is { } cents)
        {
            page.Paragraph(HoleWords.BeforeDrilling(cents));
        }

        page.Table(
            HoleWords.Caption,
            HoleWords.Head,
            exact.Tube.Holes.Select(hole =>
                new[]
                {
                    hole.Hole.Name,
                    sizes.Caliper(hole.Hole.Diameter),
                    words.Place(hole),
                    HoleWords.ForTheDrone(hole.Hole),
                }
            )
        );
        var notes = FingeredNote.Of(exact, build.Tuning, cancellationToken);
        if (notes.Count > 0)
        {
            page.Table(
                HoleWords.NotesCaption,
                HoleWords.NotesHead,
                notes.Select(note =>
                    new[]
                    {
                        HoleWords.Open(note.Opened),
                        SheetWords.Hertz(note.Frequency),
                        note.Nearest.ToString(),
                        note.CentsAboveDrone.ToString("0", CultureInfo.InvariantCulture),
                    }
                )
            );
        }

        page.Cautions([Cautions.For(CautionStep.Drilling)], SheetWords.Source);
    }

    // From the note to the first resonance before the holes are drilled; null where the drone needs one of them.
    private static double? BeforeDrilling(TubeBuild build, CancellationToken cancellationToken) =>
        build.Assembly.Parts.Any(part => part is HolePart { IsOpenInDrone: true })
            ? null
            : TubeBuilder
                .Built(
                    new TubeAssembly(
                        [.. build.Assembly.Parts.Where(part => part is not HolePart)],
                        build.Assembly.Wall
                    ),
                    build.Exact!.Cut,
                    build.Air,
                    build.Target,
                    build.Exact.Column,
                    cancellationToken
                )
                ?.Cents;
}
