using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using AirColumn;
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

    [Fact]
    public void A_summary_begins_with_a_noun_or_a_verb() =>
        Assert.Empty(
            Entries()
                .Where(entry =>
                    entry
                        .Element.Element("summary")
                        ?.Value.TrimStart()
                        .StartsWith("What ", StringComparison.Ordinal) == true
                )
                .Select(entry => entry.Name)
        );

    [Fact]
    public void Every_method_says_what_it_returns()
    {
        var documented = Entries()
            .Where(entry =>
                entry.Element.Element("returns") is not null
                || entry.Element.Element("inheritdoc") is not null
            )
            .Select(entry => WithoutParameters(entry.Name))
            .ToHashSet();
        var methods = Packages
            .SelectMany(package => package.GetExportedTypes())
            .Where(type => !type.IsSubclassOf(typeof(Delegate)))
            .SelectMany(type =>
                type.GetMethods(
                    BindingFlags.Public
                        | BindingFlags.Instance
                        | BindingFlags.Static
                        | BindingFlags.DeclaredOnly
                )
            )
            .Where(method => method.ReturnType != typeof(void) && !method.IsSpecialName)
            .Where(method => !method.IsDefined(typeof(CompilerGeneratedAttribute)))
            .Where(method => method.GetBaseDefinition() == method || method.DeclaringType!.IsInterface)
            .Select(method => $"M:{NameOf(method.DeclaringType!)}.{method.Name}")
            .ToHashSet();
        Assert.True(methods.Count > 100);
        Assert.Empty(methods.Except(documented).Order(StringComparer.Ordinal));
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
