using System.Reflection;
using System.Xml.Linq;
using AirColumn.Acoustics;
using AirColumn.Plots;
using AirColumn.Recordings;
using AirColumn.Workshop;

namespace Docs.Tests;

/// <summary>The documentation files that ship with the packages.</summary>
public class XmlDocumentationTests
{
    private static readonly Assembly[] Packages =
    [
        typeof(Column).Assembly,
        typeof(Cautions).Assembly,
        typeof(Recording).Assembly,
        typeof(Picture).Assembly,
    ];

    private static readonly HashSet<string> Types =
    [
        .. Packages.SelectMany(package => package.GetExportedTypes()).Select(NameOf),
    ];

    [Fact]
    public void They_have_no_entry_of_an_internal_type()
    {
        Assert.True(Entries().Count() > 1000);
        Assert.All(Entries(), entry => Assert.Contains(TypeOf(entry.Name), Types));
    }

    private static IEnumerable<(string Name, XElement Element)> Entries() =>
        Packages.SelectMany(package =>
            XDocument
                .Load(Path.ChangeExtension(package.Location, ".xml"))
                .Descendants("member")
                .Select(member => (member.Attribute("name")!.Value, member))
        );

    private static string NameOf(Type type) => type.FullName!.Replace('+', '.');

    // "M:Type.Name(System.Int32)" is of "Type".
    private static string TypeOf(string name)
    {
        var plain = WithoutParameters(name)[2..];
        return name[0] == 'T' ? plain : plain[..plain.LastIndexOf('.')];
    }

    private static string WithoutParameters(string name) => name.Split('(', '~')[0].Split("``")[0];
}
