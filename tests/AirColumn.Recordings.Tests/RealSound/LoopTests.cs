namespace AirColumn.Recordings.Tests.RealSound;

/// <summary>
/// Recorded wind instruments. A loop that is repeated has an exactly known mean frequency: so many periods in so many samples.
/// </summary>
public class LoopTests
{
    // Source of the sounds: RealSound/NOTICE.md. The periods in each loop are counted from the note that is played; one more or less would be
    // 20 cents and more away.
    [Theory]
    [InlineData("flute", 70)]
    [InlineData("oboe", 67)]
    [InlineData("clarinet", 4)]
    [InlineData("clarinet-high", 3)]
    [InlineData("bassoon", 22)]
    [InlineData("trombone-low", 1)]
    [InlineData("trombone", 3)]
    [InlineData("trombone-high", 2)]
    public void A_recorded_note_is_heard_at_its_exact_mean(string name, int periods)
    {
        using var loop = Recording.Open(
            Path.Combine(AppContext.BaseDirectory, "RealSound", "Loops", $"{name}.wav")
        );
        var samples = new double[(int)loop.Frames];
        loop.Read(0, 0, samples);
        var rate = loop.SampleRate.Hertz;
        var (cents, stated) = LoopedNote.Error(samples, rate, rate * periods / samples.Length);
        Assert.True(Math.Abs(cents) < 0.05, $"{cents} cents");
        Assert.True(Math.Abs(cents) < 2 * stated + 0.005, $"{cents} cents, stated {stated}");
    }

    // All wind notes of the bank. Its names put each instrument in an octave of its own, so that what is asked is that all notes of one
    // instrument lie in the same; a note that does not must have said its doubt. Readings lie within what is stated of them.
    [SoundBankFact]
    [Trait(Amount.Trait, Amount.Long)]
    public void All_recorded_wind_notes_are_heard_in_their_octave_and_range()
    {
        var heard = SoundBank
            .Winds()
            .AsParallel()
            .AsOrdered()
            .Select(note => (Note: note, Take: LoopedNote.Heard(note.Loop, note.Rate)))
            .Where(pair => pair.Take.Drone is not null)
            .ToList();
        Assert.True(heard.Count > 150, $"{heard.Count} notes");
        foreach (var instrument in heard.GroupBy(pair => pair.Note.Instrument))
        {
            var octaves = instrument
                .Select(pair =>
                    (int)Math.Round(Math.Log2(pair.Take.Drone!.Fundamental.Hertz / pair.Note.NamedHertz))
                )
                .ToList();
            var usual = octaves.Order().ElementAt(octaves.Count / 2);
            foreach (var ((note, take), octave) in instrument.Zip(octaves))
            {
                Assert.True(
                    octave == usual
                        || take.Warnings.Any(warning => warning.Contains("octave", StringComparison.Ordinal)),
                    $"{note.Name}: {take.Drone!.Fundamental.Hertz} Hz, {octave - usual} octaves off and no doubt"
                );
            }
        }

        var within = heard.Count(pair =>
        {
            var (hertz, length) = (pair.Take.Drone!.Fundamental.Hertz, pair.Note.Loop.Length);
            var exact = pair.Note.Rate * Math.Round(length * hertz / pair.Note.Rate) / length;
            return Math.Abs(1200 * Math.Log2(hertz / exact))
                <= 2 * pair.Take.Drone.StandardUncertaintyCents + 0.005;
        });
        Assert.True(within >= 0.95 * heard.Count, $"{within} of {heard.Count} within their range");
    }
}
