using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

/// <summary>What gets faults, and the tests that are to see them.</summary>
internal sealed record Package(string Name, string Folder, string Part, string Project, string Tests);

/// <summary>One expression and what stands in its place.</summary>
internal sealed record Fault(Package Package, string File, ExpressionSyntax Place, ExpressionSyntax Instead)
{
    public int Number { get; init; }

    public override string ToString() =>
        $"{Package.Name} {File}:{Place.GetLocation().GetLineSpan().StartLinePosition.Line + 1}: {Place.NormalizeWhitespace()} → {Instead.NormalizeWhitespace()}";
}
