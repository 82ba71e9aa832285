using System.Text.RegularExpressions;
using NotebookRunner;

namespace Packages.Tests;

/// <summary>
/// The notebooks show what they would show now, from packages as they are built now. All run in one go: starting takes most of the time.
/// The command that writes them runs each alone.
/// </summary>
[Collection(PackedOnce.Name)]
public partial class NotebookTests(NotebookTests.Now now) : IClassFixture<NotebookTests.Now>
{
    public static TheoryData<string> Names =>
        [.. Repository.Notebooks.Select(Path.GetFileName).OfType<string>()];

    [Theory]
    [MemberData(nameof(Names))]
    public void What_a_notebook_shows_is_current(string name)
    {
        var committed = Notebook.Read(Path.Combine(Repository.NotebookFolder, name)).Shown;
        Assert.NotEmpty(committed);
        Assert.Equal(committed, now.Shown[name]);
    }

    [Fact]
    public void There_are_six() => Assert.Equal(6, Names.Count);

    // What shows itself without a call, by the package alone: a table and pictures, not the properties of an object.
    [Theory]
    [InlineData("how-sure.ipynb", "a bore", "alt=\"Side view of a bore: 1225 mm long", "308")]
    [InlineData("first-resonance.ipynb", "a column", "<th>nearest note</th>", "497")]
    [InlineData("what-a-bell-does.ipynb", "a curve", "alt=\"Input impedance from 20 to 1500 Hz.\"", "497")]
    [InlineData("flute-holes.ipynb", "a resonance list", "<td>781.37</td><td>G5 -5.8 cents</td>", "256")]
    [InlineData("how-sure.ipynb", "a picture", "temperature of the air &#177; 3 K: 90.7 %", "379")]
    public void Values_show_themselves_richly(string name, string what, string words, string height)
    {
        var shown = Assert.Single(
            now.Shown[name],
            s =>
                s.Contains(words, StringComparison.Ordinal)
                && s.Contains($"height=\"{height}\"", StringComparison.Ordinal)
        );
        Assert.True(shown.StartsWith("text/html: <img", StringComparison.Ordinal), $"{what}: {shown}");
        Assert.Contains("PNG of 1320 by", shown, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_of_a_machine_is_in_it(string name)
    {
        var text = File.ReadAllText(Path.Combine(Repository.NotebookFolder, name));
        text = Picture().Replace(text, "");
        Assert.DoesNotMatch(MachineTrace(), text);
    }

    [GeneratedRegex("base64,[A-Za-z0-9+/=]+")]
    private static partial Regex Picture();

    [GeneratedRegex(
        @"/(root|home|tmp|Users|usr)/|[A-Z]:\\\\|localhost|\d+\.\d+\.\d+\.\d+|cellExecution|\.nuget"
    )]
    private static partial Regex MachineTrace();

    /// <summary>What all notebooks show when they are run now, by their names.</summary>
    public sealed class Now
    {
        public Now(Packed packed)
        {
            ArgumentNullException.ThrowIfNull(packed);
            var notebooks = Repository.Notebooks.Select(Notebook.Read).ToList();
            var run = packed.Session.Run(Notebook.Joined(notebooks)).Split(notebooks);
            Shown = Repository
                .Notebooks.Zip(run)
                .ToDictionary(pair => Path.GetFileName(pair.First), pair => pair.Second.Shown);
        }

        public IReadOnlyDictionary<string, IReadOnlyList<string>> Shown { get; }
    }
}
