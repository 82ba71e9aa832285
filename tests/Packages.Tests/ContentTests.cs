using System.IO.Compression;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;
using NotebookRunner;

namespace Packages.Tests;

/// <summary>What is in a package.</summary>
[Collection(PackedOnce.Name)]
public class ContentTests(Packed packed)
{
    public static TheoryData<string> Names => [.. LocalFeed.Packages];

    [Theory]
    [MemberData(nameof(Names))]
    public void It_has_its_page_icon_licence_and_documentation(string name)
    {
        using var package = Open(name);
        Assert.Contains($"# {name}\n", Text(package, "README.md"), StringComparison.Ordinal);
        Assert.True(package.GetEntry("icon.png")!.Length > 1000);
        Assert.NotNull(package.GetEntry($"lib/net10.0/{name}.xml"));
        var manifest = XDocument.Parse(Text(package, $"{name}.nuspec")).Root!.Elements().Single();
        Assert.StartsWith("MIT", Value("license"), StringComparison.Ordinal);
        Assert.Equal("README.md", Value("readme"));
        Assert.Equal("icon.png", Value("icon"));
        Assert.True(Value("description").Length > 50);
        // It would differ from clone to clone.
        Assert.DoesNotContain(manifest.Descendants().Attributes(), a => a.Name.LocalName == "branch");

        string Value(string element) => manifest.Elements().Single(e => e.Name.LocalName == element).Value;
    }

    [Fact]
    public void The_engine_brings_the_schema_of_its_documents()
    {
        using var package = Open("AirColumn");
        var file = Path.Combine(Repository.Top, "docs", "column-document.schema.json");
        Assert.Equal(
            File.ReadAllText(file).ReplaceLineEndings("\n"),
            Text(package, "schemas/column-document.schema.json")
        );
    }

    [Fact]
    public void The_engine_brings_its_sources()
    {
        using var package = Open("AirColumn");
        var file = Path.Combine(Repository.Top, "docs", "references.bib");
        Assert.Equal(File.ReadAllText(file).ReplaceLineEndings("\n"), Text(package, "references.bib"));
    }

    // Nothing but ours and what was agreed on.
    [Theory]
    [InlineData("AirColumn", "MathNet.Numerics UnitsNet")]
    [InlineData("AirColumn.Plots", "AirColumn MathNet.Numerics ScottPlot UnitsNet")]
    [InlineData("AirColumn.Recordings", "AirColumn MathNet.Numerics NAudio.Core UnitsNet")]
    [InlineData("AirColumn.Workshop", "AirColumn MathNet.Numerics Sep UnitsNet")]
    public void It_needs_no_more_than_this(string name, string needed)
    {
        using var package = Open(name);
        var ids = XDocument
            .Parse(Text(package, $"{name}.nuspec"))
            .Descendants()
            .Where(e => e.Name.LocalName == "dependency")
            .Select(e => e.Attribute("id")!.Value)
            .Order(StringComparer.Ordinal);
        Assert.Equal(needed, string.Join(' ', ids));
    }

    // A debugger finds the symbols by the number that both carry.
    [Theory]
    [MemberData(nameof(Names))]
    public void Its_symbols_are_those_of_its_code(string name)
    {
        using var package = Open(name);
        using var symbols = ZipFile.OpenRead(
            Path.Combine(packed.Session.Feed, "packed", $"{name}.{Repository.Version}.snupkg")
        );
        using var code = new PEReader(Copy(package.GetEntry($"lib/net10.0/{name}.dll")!));
        using var pdb = MetadataReaderProvider.FromPortablePdbStream(
            Copy(symbols.GetEntry($"lib/net10.0/{name}.pdb")!)
        );
        var entry = code.ReadDebugDirectory().Single(e => e.Type == DebugDirectoryEntryType.CodeView);
        var id = new BlobContentId(pdb.GetMetadataReader().DebugMetadataHeader!.Id);
        Assert.Equal(id.Guid, code.ReadCodeViewDebugDirectoryData(entry).Guid);
    }

    // The compiler leaves this mark when the same sources give the same bytes.
    [Theory]
    [MemberData(nameof(Names))]
    public void Its_code_is_reproducible(string name)
    {
        using var package = Open(name);
        using var code = new PEReader(Copy(package.GetEntry($"lib/net10.0/{name}.dll")!));
        Assert.Contains(code.ReadDebugDirectory(), e => e.Type == DebugDirectoryEntryType.Reproducible);
    }

    private ZipArchive Open(string name) =>
        ZipFile.OpenRead(Path.Combine(packed.Session.Feed, $"{name}.{packed.Session.Version}.nupkg"));

    private static string Text(ZipArchive package, string entry)
    {
        using var reader = new StreamReader(package.GetEntry(entry)!.Open());
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static MemoryStream Copy(ZipArchiveEntry entry)
    {
        var memory = new MemoryStream();
        using var stream = entry.Open();
        stream.CopyTo(memory);
        memory.Position = 0;
        return memory;
    }
}
