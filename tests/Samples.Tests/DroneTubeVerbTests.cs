using System.Text.Json;
using AirColumn;
using AirColumn.Documents;
using UnitsNet;

namespace Samples.Tests;

/// <summary>The verbs of DroneTube that take a parts file.</summary>
public sealed class DroneTubeVerbTests : IDisposable
{
    private static readonly string Shown = Path.Combine(
        ShownPage.Top,
        "samples",
        "DroneTube",
        "workshop-tube.json"
    );

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("drone-tube-");

    public void Dispose() => folder.Delete(true);

    [Fact]
    public void A_build_sheet_is_written_beside_the_parts_file()
    {
        var parts = Path.Combine(folder.FullName, "tube.json");
        File.Copy(Shown, parts);
        var said = Sample.DroneTube("sheet", parts, "--note", "D2").Succeeded();
        Assert.Contains("puts the first resonance on D2, 73.42 Hz.", said, StringComparison.Ordinal);
        var page = File.ReadAllText(Path.Combine(folder.FullName, "tube-D2.html"));
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        Assert.Contains("<h1>Stepped workshop tube on D2</h1>", page, StringComparison.Ordinal);
        Assert.Equal(page, Sample.DroneTube("sheet", parts, "--note", "D2", "--out", "-").Succeeded());
    }

    // What the engine finds in the document: the note for which the tube was cut, and the tube as cut.
    [Fact]
    public void A_tube_becomes_a_column_document_for_other_programs()
    {
        var path = Path.Combine(folder.FullName, "column.json");
        var said = Sample.DroneTube("column", Shown, "--note", "D2", "--out", path).Succeeded();
        Assert.Contains("  2  main pipe, the open pipe\n", said, StringComparison.Ordinal);
        Assert.Contains("  7  bell\n", said, StringComparison.Ordinal);
        var column = ColumnDocument.Parse(File.ReadAllText(path));
        Assert.Equal("Stepped workshop tube", column.Name);
        // D2 is 31 semitones below A4 = 440 Hz.
        Assert.Equal(
            440 * Math.Pow(2, -31 / 12.0),
            column.ToColumn().FirstResonances(1)[0].Frequency.Hertz,
            1e-6
        );

        var cut = ColumnDocument.Parse(Sample.DroneTube("column", Shown, "--cut", "1080 mm").Succeeded());
        // 25 mm of the mouthpiece are in the pipe.
        Assert.Equal(1.055, cut.Bore.Sections[1].Length.Meters, 1e-12);

        Sample
            .DroneTube("column", Shown)
            .Refused(
                2,
                "Give either --note, the note to cut the open pipe for, or --cut, the length of the open pipe."
            );
        Sample
            .DroneTube("column", Shown, "--note", "D2", "--out", Shown)
            .Refused(2, $"--out would be the parts file itself, '{Shown}'; name another file.");
    }

    // Each row of the table against a bore put together here.
    [Fact]
    public void Each_note_of_the_table_comes_out_when_the_engine_is_asked()
    {
        var json = Sample.DroneTube("table", Shown, "--json").Json();
        var notes = json.GetProperty("notes").EnumerateArray().ToList();
        Assert.Equal(
            "B1 C2 C#2 D2 D#2 E2 F2",
            string.Join(' ', notes.Select(note => note.GetProperty("note").GetString()))
        );
        var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
        var slant = Math.Sqrt(60 * 60 + 9.9 * 9.9);
        for (var i = 0; i < notes.Count; i++)
        {
            var cut = 1000 * Number(notes[i].GetProperty("onTheNote"), "cutMetres");
            var bore = Bore.Build()
                .Cylinder(Mm(30), Mm(37))
                .Cylinder(Mm(48.26 - 3.68 - 4.19), Mm(cut - 25))
                .Cylinder(Mm(1.894 * 25.4), Mm(1))
                .Cylinder(Mm(41), Mm(14))
                .Cylinder(Mm(2.369 * 25.4), Mm(1))
                .Cylinder(Mm(52.2), Mm(150 - slant))
                .Cone(Mm(72), Mm(60))
                .OpenEnd(Mm(3));
            var first = new Column(bore, air).FirstResonances(1)[0].Frequency.Hertz;
            // B1 is 34 semitones below A4.
            Assert.Equal(440 * Math.Pow(2, (i - 34) / 12.0), first, 1e-4);
        }

        var text = Sample.DroneTube("table", Shown, "--from", "C2", "--to", "D2").Succeeded();
        // A heading, three notes, a caution on two lines.
        Assert.Equal(6, text.TrimEnd('\n').Split('\n').Length);
    }

    [Fact]
    public void The_read_me_shows_the_table_that_is_printed()
    {
        var page = File.ReadAllText(Path.Combine(ShownPage.Top, "samples", "DroneTube", "README.md"));
        Assert.Contains(
            $"```\n{Sample.DroneTube("table", Shown).Succeeded()}```",
            page.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
    }

    // The example of the documentation is the file beside the program, without its prices.
    [Fact]
    public void The_documented_parts_file_is_read()
    {
        var page = File.ReadAllText(Path.Combine(ShownPage.Top, "docs", "parts-file.md"))
            .ReplaceLineEndings("\n");
        var json = page.Split("```json\n")[1].Split("```")[0];
        var parts = Path.Combine(folder.FullName, "shown.json");
        File.WriteAllText(parts, json);
        Assert.Equal(
            Sample.DroneTube("table", Shown).Succeeded(),
            Sample.DroneTube("table", parts).Succeeded()
        );
    }

    [Fact]
    public void Units_can_be_chosen()
    {
        var metric = Sample
            .DroneTube("table", Shown, "--from", "D2", "--to", "D2", "--units", "mm")
            .Succeeded();
        Assert.Contains("1093 mm", metric, StringComparison.Ordinal);
        Assert.DoesNotContain(" in", metric, StringComparison.Ordinal);
        var inches = Sample
            .DroneTube("table", Shown, "--from", "D2", "--to", "D2", "--units", "in")
            .Succeeded();
        Assert.Contains("43 1/16 in", inches, StringComparison.Ordinal);
        Assert.DoesNotContain(" mm", inches, StringComparison.Ordinal);
        Sample
            .DroneTube("table", Shown, "--units", "cubits")
            .Refused(2, "--units: 'cubits' is not known; write mm, in or both.");
    }

    [Fact]
    public void Tubes_are_compared_side_by_side()
    {
        var plain = Path.Combine(folder.FullName, "plain.json");
        File.WriteAllText(
            plain,
            """{ "tube": 1, "parts": [ { "part": "pipe", "stock": "pvc-40 1-1/2", "inside": "39.8 mm", "length": "open" } ] }"""
        );
        var json = Sample.DroneTube("compare", Shown, plain, "--note", "D2", "--json").Json();
        var tubes = json.GetProperty("tubes").EnumerateArray().ToList();
        Assert.Equal("Stepped workshop tube", tubes[0].GetProperty("name").GetString());
        Assert.Equal("plain", tubes[1].GetProperty("name").GetString());
        Assert.Equal(18.2, Number(tubes[0], "price"), 1e-9);
        Assert.Equal(JsonValueKind.Null, tubes[1].GetProperty("price").ValueKind);
        Assert.All(tubes, tube => Assert.InRange(Number(tube, "firstPeakQ"), 30, 90));
        var text = Sample.DroneTube("compare", Shown, plain, "--note", "D2").Succeeded();
        Assert.Contains("cost: not known: a part has no price", text, StringComparison.Ordinal);
    }

    [Fact]
    public void All_pipes_of_a_set_fit_into_the_stock()
    {
        var json = Sample
            .DroneTube(
                "cuts",
                Shown,
                "--notes",
                "C2,D2,E2,F2,D2",
                "--stock",
                "10 ft, pvc-40 2 = 2 m",
                "--units",
                "mm",
                "--json"
            )
            .Json();
        var pipes = json.GetProperty("pipes").EnumerateArray().ToList();
        Assert.Equal(
            ["pvc-40 1-1/2", "pvc-40 2"],
            pipes.Select(pipe => pipe.GetProperty("pipe").GetString()!)
        );
        Assert.Equal([3.048, 2], pipes.Select(pipe => Number(pipe, "stockMetres")));
        foreach (var pipe in pipes)
        {
            Assert.True(pipe.GetProperty("provenFewest").GetBoolean());
            var lengths = pipe.GetProperty("lengths").EnumerateArray().ToList();
            var cuts = lengths.Select(length =>
                length
                    .GetProperty("pieces")
                    .EnumerateArray()
                    .Select(piece => Number(piece, "cutMetres"))
                    .ToList()
            );
            Assert.Equal(5, cuts.Sum(pieces => pieces.Count));
            Assert.All(
                cuts,
                pieces =>
                    Assert.True(pieces.Sum() + 0.003 * (pieces.Count - 1) <= Number(pipe, "stockMetres"))
            );
        }

        // Five end pipes of 150 mm, four cuts between them and one behind.
        Assert.Equal(2 - 5 * 0.153, Number(pipes[1], "leftOverMetres"), 1e-9);
        Sample
            .DroneTube("cuts", Shown, "--notes", "C2", "--stock", "1 m", "--units", "mm")
            .Refused(
                2,
                "The piece 'C2 main pipe' is 1239 mm long, longer than the stock of 1 m; buy longer stock or join two pieces."
            );
        Sample
            .DroneTube("cuts", Shown, "--notes", "C2", "--stock", "3 m, pvc-40 3 = 2 m")
            .Refused(
                2,
                "--stock names 'pvc-40 3', which is not a pipe here; the pipes are pvc-40 1-1/2, pvc-40 2."
            );
        Sample
            .DroneTube("cuts", Shown, "--notes", "C2", "--stock", "pvc-40 2 = 2 m")
            .Refused(2, "--stock gives no length for pvc-40 1-1/2; add e.g. \"pvc-40 1-1/2 = 3 m\".");
        Sample
            .DroneTube("cuts", Shown, "--notes", "C2;D2", "--stock", "3 m")
            .Refused(
                2,
                "--notes has 2 lists for 1 parts files; give one list for all, or one for each, with ; between."
            );
    }

    [Fact]
    public void Tubes_of_several_files_are_cut_as_one_set()
    {
        var plain = Path.Combine(folder.FullName, "plain.json");
        File.WriteAllText(
            plain,
            """{ "tube": 1, "parts": [ { "part": "pipe", "stock": "pvc-40 1-1/2", "length": "open" } ] }"""
        );
        var text = Sample
            .DroneTube("cuts", Shown, plain, "--notes", "C2,D2; E2", "--stock", "3 m", "--units", "in")
            .Output;
        Assert.Contains(
            "pvc-40 1-1/2: Buy 2 lengths of 118 1/8 in (minimum).",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("pvc-40 2: Buy 1 length of", text, StringComparison.Ordinal);
        Assert.Contains("Stepped workshop tube C2 main pipe 48", text, StringComparison.Ordinal);
        Assert.Contains("tube 2 E2 pipe 1 ", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" mm", text, StringComparison.Ordinal);
    }

    // What the tube is off by adds to the prior of 21.5 ± 12; one take at ± 5 cents; in closed form.
    [Fact]
    public void What_was_heard_corrects_what_is_expected()
    {
        var table = Sample.DroneTube("trim", Shown, "--note", "D2", "--cut", "1120 mm", "--json").Json();
        Assert.Equal(21.5, Number(table, "correctionCents"), 1e-9);
        var row = table.GetProperty("rows")[0];
        var resonance = Number(row, "noteHz") * Math.Pow(2, -21.5 / 1200);
        var heard = (resonance * Math.Pow(2, 40 / 1200.0)).ToString(
            "0.0000",
            System.Globalization.CultureInfo.InvariantCulture
        );
        var after = Sample
            .DroneTube(
                "trim",
                Shown,
                "--note",
                "D2",
                "--cut",
                "1120 mm",
                "--heard",
                $"{heard} Hz",
                "--joints",
                "home",
                "--json"
            )
            .Json();
        var deviation = Number(after, "correctionStandardDeviationCents");
        // σ of the prior from that of the posterior, and from that the posterior's mean.
        var prior = 1 / (1 / (deviation * deviation) - 1 / 25.0);
        Assert.InRange(Math.Sqrt(prior), 12.5, 16);
        var expected = (21.5 / prior + 40 / 25.0) / (1 / prior + 1 / 25.0);
        Assert.Equal(expected, Number(after, "correctionCents"), 0.01);
        // Nearer to what was heard than to the guess.
        Assert.InRange(Number(after, "correctionCents"), 36, 40);
        // What is cut off and what is left make the pipe.
        Assert.Equal(1.12, Number(after, "safeCutMetres") + Number(after, "safePipeMetres"), 1e-9);
        var first = after.GetProperty("rows")[0];
        Assert.Equal(1.12, Number(first, "pipeMetres"), 1e-9);
    }

    // The same note heard dry means a tube that will be sharper: what is known of the player is the note less the dry resonance.
    [Fact]
    public void What_was_heard_dry_is_heard_of_a_longer_tube()
    {
        JsonElement Heard(params string[] more) =>
            Sample
                .DroneTube([
                    "trim",
                    Shown,
                    "--note",
                    "D2",
                    "--cut",
                    "1120 mm",
                    "--heard",
                    "70.5 Hz",
                    "--json",
                    .. more,
                ])
                .Json();
        var home = Heard("--joints", "home");
        var dry = Heard();
        var measured = Heard("--stops-short", "16.7 mm");
        Assert.False(home.TryGetProperty("dryJoints", out _));
        // By ASTM D2466 and D1785, by hand: 9.26 and 9.46 mm short of the stops, 1 mm of each is left at home.
        var joints = dry.GetProperty("dryJoints");
        Assert.Equal(0.01672, Number(joints, "stopShortMetres"), 1e-5);
        Assert.Equal(
            73.416 * Math.Pow(2, -Number(joints, "centsToHome") / 1200),
            Number(joints, "trimToHz"),
            2e-3
        );
        // Sure of the joints, all of what is between dry and home is the player's, but for the guess before.
        var learned = Number(measured, "correctionCents") - Number(home, "correctionCents");
        Assert.InRange(learned / Number(joints, "centsToHome"), 0.8, 1);
        Assert.True(
            Number(dry, "correctionStandardDeviationCents")
                > 1.3 * Number(measured, "correctionStandardDeviationCents")
        );
        Assert.True(Number(measured, "safeCutMetres") < Number(home, "safeCutMetres") - 0.005);
        Sample
            .DroneTube("trim", Shown, "--note", "D2", "--cut", "1120 mm", "--stops-short", "160 mm")
            .Refused(2, "--stops-short is 160 mm; allowed is 0 mm to 55.15 mm.");
    }

    [Fact]
    public void Trimming_is_told_in_lengths_of_the_pipe_as_it_is_sawn()
    {
        var text = Sample
            .DroneTube("trim", Shown, "--note", "D2", "--cut", "1120 mm", "--units", "mm")
            .Succeeded();
        var off = Amount(text, "Cut off no more than ", " mm");
        Assert.Equal(1120 - off, Amount(text, "The pipe is then ", " mm long"), 0.11);
        Assert.Contains("Cutting: Clamp the pipe", text, StringComparison.Ordinal);
        Sample
            .DroneTube(
                "trim",
                Shown,
                "--note",
                "D2",
                "--cut",
                "1090 mm",
                "--heard",
                "60 Hz",
                "--joints",
                "home"
            )
            .Refused(
                2,
                "--heard is 60 Hz, 306 cents from the first resonance of this tube, 71.6 Hz; that is not its drone. Check the note, the cut and the parts."
            );
        Sample
            .DroneTube("trim", Shown, "--note", "D2", "--cut", "1090 mm", "--heard", "-1")
            .Refused(2, "--heard: '-1' is not a frequency above 0; write, for example, \"71.3 Hz\".");
        Sample
            .DroneTube("trim", Shown, "--note", "D2", "--cut", "1000 m")
            .Refused(2, "--cut is 1000000 mm; allowed is 0.1 mm to 10000 mm.");

        static double Amount(string text, string before, string after)
        {
            var start = text.IndexOf(before, StringComparison.Ordinal) + before.Length;
            var end = text.IndexOf(after, start, StringComparison.Ordinal);
            return double.Parse(text[start..end], System.Globalization.CultureInfo.InvariantCulture);
        }
    }

    [Fact]
    public void Holes_have_a_template_and_notes()
    {
        var parts = Path.Combine(folder.FullName, "drilled.json");
        File.WriteAllText(
            parts,
            """
            { "tube": 1, "parts": [
              { "part": "pipe", "name": "pipe", "inside": "38 mm", "outside": "44 mm", "length": "open" },
              { "part": "hole", "name": "low hole", "diameter": "9 mm", "at": "200 mm" },
              { "part": "hole", "name": "vent", "diameter": "5 mm", "at": "60 mm", "drone": "open" } ] }
            """
        );
        var said = Sample.DroneTube("template", parts, "--part", "Low hole").Succeeded();
        var path = Path.Combine(folder.FullName, "drilled-Low-hole-template.html");
        Assert.Contains($"The template is {path}.", said, StringComparison.Ordinal);
        var page = File.ReadAllText(path);
        Assert.Contains("low hole: ⌀ 9 mm", page, StringComparison.Ordinal);
        Assert.Contains("vent: ⌀ 5 mm", page, StringComparison.Ordinal);
        Assert.Equal(page, Sample.DroneTube("template", parts, "--part", "vent", "--out", "-").Succeeded());
        Sample
            .DroneTube("template", parts, "--part", "bell")
            .Refused(
                2,
                "--part is 'bell'; the parts file has no part of that name. It has 'pipe', 'low hole', 'vent'."
            );

        var table = Sample.DroneTube("table", parts, "--from", "D2", "--to", "D2", "--json");
        Assert.Contains("drill it when the drone is in tune", table.Error, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(table.Output);
        var notes = json.RootElement.GetProperty("notes")[0];
        var opened = Assert.Single(notes.GetProperty("fingered").EnumerateArray());
        Assert.Equal("oo", opened.GetProperty("fingering").GetString());
        Assert.Equal("low hole", opened.GetProperty("open")[0].GetString());
        Assert.InRange(Number(opened, "centsAboveDrone"), 1, 400);
    }

    [Fact]
    public void A_sheet_never_takes_the_place_of_its_parts_file()
    {
        var parts = Path.Combine(folder.FullName, "tube.html");
        File.Copy(Shown, parts);
        Sample
            .DroneTube("sheet", parts, "--note", "D2", "--out", parts)
            .Refused(2, $"--out would be the parts file itself, '{parts}'; name another file.");
        Assert.Equal(File.ReadAllText(Shown), File.ReadAllText(parts));
        Sample
            .DroneTube("sheet", Shown, "--note", "D2", "--out", "")
            .Refused(2, "--out is empty; name a file, or - for the standard output.");
    }

    [Fact]
    public void What_nobody_confirmed_is_warned_of_by_every_verb()
    {
        var parts = Path.Combine(folder.FullName, "pp.json");
        File.WriteAllText(
            parts,
            """{ "tube": 1, "parts": [ { "part": "pipe", "stock": "pp-waste 40", "length": "open" } ] }"""
        );
        foreach (
            var arguments in new string[][]
            {
                ["table", parts, "--from", "D2", "--to", "D2"],
                ["compare", parts, "--note", "D2"],
                ["cuts", parts, "--notes", "D2", "--stock", "3 m"],
                ["trim", parts, "--note", "D2", "--cut", "1200 mm"],
            }
        )
        {
            Assert.Contains(
                "are from memory: measure the pipe.",
                Sample.DroneTube(arguments).Error,
                StringComparison.Ordinal
            );
        }

        File.WriteAllText(
            parts,
            """{ "tube": 1, "parts": [ { "part": "pipe", "stock": "pp-waste 40", "inside": "36.2 mm", "length": "open" } ] }"""
        );
        Assert.DoesNotContain(
            "from memory",
            Sample.DroneTube("table", parts, "--from", "D2", "--to", "D2").Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_catalogue_shows_its_sources_and_takes_ones_own()
    {
        var text = Sample.DroneTube("stock").Succeeded();
        Assert.Contains("ASTM D1785 schedule 40, edition 1988", text, StringComparison.Ordinal);
        Assert.Contains("from memory: not", text, StringComparison.Ordinal);
        var own = Path.Combine(folder.FullName, "own.csv");
        File.WriteAllText(
            own,
            "series,size,material,outside,outside_tolerance,wall_min,wall_max,inside,unit,standard,edition,source,certainty\n"
                + "shed,long one,PVC,44,,,,38.5,mm,none,2026,caliper,own\n"
        );
        Assert.Contains(
            "shed long one",
            Sample.DroneTube("stock", "--pipes", own).Succeeded(),
            StringComparison.Ordinal
        );
        File.WriteAllText(own, "series,size\n");
        Sample
            .DroneTube("stock", "--pipes", own)
            .Refused(
                2,
                $"{own}: The catalogue has no column 'material'; its columns must be series, size, material, outside, outside_tolerance, wall_min, wall_max, inside, unit, standard, edition, source, certainty."
            );
    }

    [Fact]
    public void What_is_wrong_with_a_parts_file_is_told_in_a_line()
    {
        var file = Path.Combine(folder.FullName, "bad.json");
        File.WriteAllText(
            file,
            """{ "tube": 1, "parts": [ { "part": "pipe", "stock": "pvc-40 9", "length": "open" } ] }"""
        );
        Sample
            .DroneTube("sheet", file, "--note", "D2")
            .Refused(
                2,
                $"{file}: parts[0]: There is no pipe 'pvc-40 9'; the sizes of pvc-40 are 1/2, 3/4, 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4."
            );
        Assert.False(File.Exists(Path.ChangeExtension(file, ".html")));
        Sample
            .DroneTube("table", Path.Combine(folder.FullName, "none.json"))
            .Refused(2, $"There is no file '{Path.Combine(folder.FullName, "none.json")}'.");
    }

    private static double Number(JsonElement json, string name) => json.GetProperty(name).GetDouble();

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
