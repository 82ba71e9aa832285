using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Xml.Linq;
using Microsoft.Build.Framework;
using Microsoft.Build.Utilities;

/// <summary>
/// A step of the build: takes out of the documentation file the entries of members that a user of the package cannot reach. Part of the build and not
/// of a package.
/// </summary>
public class KeepPublicDocumentation : Task
{
    private const BindingFlags Declared =
        BindingFlags.Public
        | BindingFlags.NonPublic
        | BindingFlags.Instance
        | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    public string Documentation { get; set; }
    public string Compiled { get; set; }
    public ITaskItem[] References { get; set; }

    public override bool Execute()
    {
        var document = XDocument.Load(Documentation, LoadOptions.PreserveWhitespace);
        var reached = Reached();
        var hidden = document
            .Descendants("member")
            .Where(member => !reached.Contains(Counted((string)member.Attribute("name"))))
            .ToList();
        // A file without hidden entries keeps its time, so that nothing is copied again.
        if (hidden.Count > 0)
        {
            foreach (var member in hidden)
            {
                (member.PreviousNode as XText)?.Remove();
                member.Remove();
            }

            document.Save(Documentation, SaveOptions.DisableFormatting);
        }

        return !Log.HasLoggedErrors;
    }

    /// <summary>What <see cref="Counted"/> makes of the entries of public and protected members.</summary>
    private HashSet<string> Reached()
    {
        var files = References
            .Select(item => item.GetMetadata("FullPath"))
            .GroupBy(Path.GetFileNameWithoutExtension)
            .ToDictionary(group => group.Key, group => group.First());
        // From bytes, so that the files stay free for the next build; once each, so that a type is one and the same.
        var loaded = new Dictionary<string, Assembly>();
        Assembly Resolve(object sender, ResolveEventArgs needed)
        {
            var name = new AssemblyName(needed.Name).Name;
            if (!loaded.TryGetValue(name, out var assembly) && files.TryGetValue(name, out var file))
            {
                assembly = loaded[name] = Assembly.Load(File.ReadAllBytes(file));
            }

            return assembly;
        }

        AppDomain.CurrentDomain.AssemblyResolve += Resolve;
        try
        {
            var names = new HashSet<string>();
            foreach (
                var type in Assembly
                    .Load(File.ReadAllBytes(Compiled))
                    .GetTypes()
                    .Where(type => type.IsVisible)
            )
            {
                var name = type.FullName.Replace('+', '.');
                names.Add("T:" + name);
                foreach (var member in type.GetMembers(Declared).Where(IsReached))
                {
                    var count = member is MethodBase method ? "/" + method.GetParameters().Length : "";
                    names.Add(Kind(member) + name + "." + member.Name.Replace('.', '#') + count);
                }
            }

            return names;
        }
        finally
        {
            AppDomain.CurrentDomain.AssemblyResolve -= Resolve;
        }
    }

    private static bool IsReached(MemberInfo member)
    {
        switch (member)
        {
            case MethodBase method:
                return method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;
            case FieldInfo field:
                return field.IsPublic || field.IsFamily || field.IsFamilyOrAssembly;
            case PropertyInfo property:
                return property.GetAccessors(true).Any(IsReached);
            case EventInfo raised:
                return IsReached(raised.AddMethod);
            default:
                return false;
        }
    }

    private static string Kind(MemberInfo member)
    {
        switch (member)
        {
            case MethodBase _:
                return "M:";
            case FieldInfo _:
                return "F:";
            case PropertyInfo _:
                return "P:";
            default:
                return "E:";
        }
    }

    // "M:Name``1(System.Int32)~Other" is "M:Name/1": an internal overload differs in the number of its parameters.
    private static string Counted(string entry)
    {
        var end = entry.IndexOfAny(new[] { '(', '~' });
        var name = end < 0 ? entry : entry.Substring(0, end);
        var generic = name.IndexOf("``", StringComparison.Ordinal);
        name = generic < 0 ? name : name.Substring(0, generic);
        return name.StartsWith("M:", StringComparison.Ordinal) ? name + "/" + ParameterCount(entry) : name;
    }

    private static int ParameterCount(string entry)
    {
        var start = entry.IndexOf('(');
        if (start < 0)
        {
            return 0;
        }

        var (count, depth) = (1, 0);
        foreach (var letter in entry.Substring(start))
        {
            depth +=
                "{[(".IndexOf(letter) >= 0 ? 1
                : "}])".IndexOf(letter) >= 0 ? -1
                : 0;
            count += letter == ',' && depth == 1 ? 1 : 0;
        }

        return count;
    }
}
