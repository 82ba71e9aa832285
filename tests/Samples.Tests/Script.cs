using System.Globalization;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Samples.Tests;

/// <summary>A script of samples/Scripts, compiled and run within these tests, beside the library that they have: a process builds all of it anew.</summary>
internal static class Script
{
    // What the SDK adds to a file by itself.
    private const string Usings = """
        global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq;
        global using System.Threading; global using System.Threading.Tasks;
        """;

    private static readonly Lock oneAtATime = new();

    /// <summary>Its text.</summary>
    public static string TextOf(string script) =>
        File.ReadAllText(Path.Combine(ShownPage.Scripts, script)).ReplaceLineEndings("\n");

    /// <summary>Its text without the lines for the SDK, which begin with "#:".</summary>
    public static string CodeOf(string script) =>
        string.Join(
            '\n',
            TextOf(script).Split('\n').SkipWhile(line => line.StartsWith("#:", StringComparison.Ordinal))
        );

    /// <summary>What it prints.</summary>
    public static string Output(string script)
    {
        var entry = Compiled(script);
        // There is one console.
        lock (oneAtATime)
        {
            var usual = Console.Out;
            using var output = new StringWriter { NewLine = "\n" };
            Console.SetOut(output);
            try
            {
                // A thread of its own, in the culture that the script asks of the SDK.
                Exception? thrown = null;
                var thread = new Thread(() =>
                    thrown = Record.Exception(() => entry.Invoke(null, [Array.Empty<string>()]))
                )
                {
                    CurrentCulture = CultureInfo.InvariantCulture,
                };
                thread.Start();
                thread.Join();
                Assert.Null(thrown);
            }
            finally
            {
                Console.SetOut(usual);
            }

            return output.ToString();
        }
    }

    private static MethodInfo Compiled(string script)
    {
        var options = new CSharpParseOptions(LanguageVersion.Preview);
        var compilation = CSharpCompilation.Create(
            Path.GetFileNameWithoutExtension(script),
            [
                CSharpSyntaxTree.ParseText(CodeOf(script), options),
                CSharpSyntaxTree.ParseText(Usings, options),
            ],
            ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
                .Split(Path.PathSeparator)
                .Select(file => MetadataReference.CreateFromFile(file)),
            new CSharpCompilationOptions(
                OutputKind.ConsoleApplication,
                optimizationLevel: OptimizationLevel.Release,
                nullableContextOptions: NullableContextOptions.Enable
            )
        );
        using var assembly = new MemoryStream();
        var emitted = compilation.Emit(assembly);
        Assert.True(emitted.Success, string.Join('\n', emitted.Diagnostics));
        return Assembly.Load(assembly.ToArray()).EntryPoint!;
    }
}
