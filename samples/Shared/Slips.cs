using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text.RegularExpressions;
using AirColumn.Documents;

namespace Shared;

/// <summary>The likeliest slips of a command line, told before anything is done with it.</summary>
internal static partial class Slips
{
    private static readonly HashSet<string> Units = new(
        "mm cm m in inch inches ft feet foot \" ” ″ ' ’ ′ °C C °F F K % Hz kHz cent cents ct c s min h".Split(
            ' '
        ),
        StringComparer.OrdinalIgnoreCase
    );

    /// <summary>What is wrong, and what to write; null if nothing of that kind.</summary>
    public static string? In(ParseResult parsed, string[] arguments, string program)
    {
        var options = parsed.CommandResult.Command.Options;
        return Curly(arguments) ?? NotQuoted(options, arguments) ?? Unknown(options, parsed.Tokens, program);
    }

    // A word processor's quotation marks are letters to a shell, so that it parts the text between them.
    private static string? Curly(string[] arguments)
    {
        var first = Array.FindIndex(arguments, text => text is ['“' or '„' or '”' or '‘' or '‚', ..]);
        if (first < 0)
        {
            return null;
        }

        var last = Array.FindIndex(arguments, first, text => text is [.., '“' or '”' or '’' or '‘']);
        var text = string.Join(' ', arguments[first..(Math.Max(first, last) + 1)]);
        return $"{text} stands in curly quotation marks; write straight ones: \"{text.Trim('“', '„', '”', '‘', '‚', '’')}\".";
    }

    // --cut 46 1/2 in
    private static string? NotQuoted(IList<Option> options, string[] arguments)
    {
        for (var i = 0; i + 2 < arguments.Length; i++)
        {
            if (!Named(options, arguments[i]) || !Value().IsMatch(arguments[i + 1]))
            {
                continue;
            }

            var end = i + 2;
            while (end < arguments.Length && Continues(arguments[end]))
            {
                end++;
            }

            if (end > i + 2)
            {
                var value = string.Join(' ', arguments[(i + 1)..end]);
                return $"{arguments[i]}: put quotation marks around a value of several words: {arguments[i]} \"{value}\".";
            }
        }

        return null;
    }

    private static bool Continues(string text) =>
        !File.Exists(text) && (Units.Contains(text) || Part().IsMatch(text));

    // An option that is not known, which would be taken for a file's name.
    private static string? Unknown(IList<Option> options, IReadOnlyList<Token> tokens, string program)
    {
        var unknown = tokens
            .TakeWhile(token => token.Type != TokenType.DoubleDash)
            .FirstOrDefault(token => token.Type == TokenType.Argument && Dashed().IsMatch(token.Value));
        if (unknown is null)
        {
            return null;
        }

        var name = unknown.Value.Split('=', ':')[0];
        var meant = Nearest.IfNear(name.TrimStart('-'), options.Select(option => option.Name.TrimStart('-')));
        return $"'{name}' is not an option of {program}{(meant is null ? "." : $"; did you mean '--{meant}'?")}";
    }

    private static bool Named(IList<Option> options, string text) =>
        options.Any(option => option.Name == text || option.Aliases.Contains(text));

    [GeneratedRegex(@"^([+\-\u2212]?\.?[0-9].*|[A-Ga-g][#b♯♭]?[0-9])$", RegexOptions.CultureInvariant)]
    private static partial Regex Value();

    // What may follow a number or a note: a fraction, feet's inches, a tuner's cents.
    [GeneratedRegex(
        @"^([0-9]+/[0-9]+|[¼½¾⅛⅜⅝⅞]|[0-9]+(\.[0-9]+)?[""”″]|[+\-\u2212][0-9]+(\.[0-9]+)?)$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Part();

    [GeneratedRegex(@"^(--|-|—|–)[A-Za-z]", RegexOptions.CultureInvariant)]
    private static partial Regex Dashed();
}
