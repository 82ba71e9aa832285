using System.CommandLine;
using System.Text;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Workshop;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>Parts files named on the command line, and the user's own catalogues.</summary>
internal sealed class TubeFile
{
    private readonly Option<string?> pipes = new("--pipes")
    {
        Description = "A CSV file of your own pipes, which replace pipes of the same name.",
    };

    private readonly Option<string?> sockets = new("--sockets")
    {
        Description = "A CSV file of your own sockets, which replace sockets of the same name.",
    };

    /// <summary>One parts file.</summary>
    public Argument<string> One { get; } =
        new("PARTS") { Description = "The parts file (JSON); - is the standard input." };

    /// <summary>Several.</summary>
    public Argument<string[]> Several { get; } =
        new("PARTS") { Description = "Parts files (JSON).", Arity = ArgumentArity.OneOrMore };

    public IEnumerable<Option> Options => [pipes, sockets];

    /// <summary>A note that must be given.</summary>
    public static Option<Pitch?> Note()
    {
        var note = Shared.Options.Parsed<Pitch?>(
            "--note",
            "The drone, such as E2, F#2 or Eb2.",
            text => DroneNote.Parse(text)
        );
        note.Required = true;
        return note;
    }

    /// <summary>How long the open pipe is, which must be given.</summary>
    public static Option<Length?> Cut()
    {
        var cut = Shared.Options.Parsed<Length?>(
            "--cut",
            "The present length of the open pipe, such as \"1180 mm\" or \"46 1/2 in\".",
            text => new AddedPart("any", QuantityText.ParseLength(text), Length.FromMillimeters(30)).Adds
        );
        cut.Required = true;
        return cut;
    }

    public PartsFile Read(ParseResult parsed) => Read(parsed.GetRequiredValue(One), Catalogue(parsed));

    public IReadOnlyList<PartsFile> ReadAll(ParseResult parsed)
    {
        var catalogue = Catalogue(parsed);
        return [.. parsed.GetRequiredValue(Several).Select(path => Read(path, catalogue))];
    }

    public Catalogue Catalogue(ParseResult parsed)
    {
        var catalogue = AirColumn.Workshop.Stock.Catalogue.Standard;
        if (parsed.GetValue(pipes) is { } ownPipes)
        {
            catalogue = Told(ownPipes, text => catalogue.WithPipes(text));
        }

        return parsed.GetValue(sockets) is { } ownSockets
            ? Told(ownSockets, text => catalogue.WithSockets(text))
            : catalogue;
    }

    private static PartsFile Read(string path, Catalogue catalogue) =>
        Told(path, text => PartsFile.Read(text, catalogue));

    private static T Told<T>(string path, Func<string, T> read)
    {
        var text = InputFile.Read(
            path,
            stream =>
            {
                using var reader = new StreamReader(stream, Encoding.UTF8);
                return reader.ReadToEnd();
            }
        );
        try
        {
            return read(text);
        }
        catch (FormatException problem)
        {
            throw new BadInputException($"{(path == "-" ? "standard input" : path)}: {problem.Message}");
        }
    }
}
