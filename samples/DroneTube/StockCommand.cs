using System.CommandLine;
using System.Text;
using AirColumn.Workshop.Stock;
using Shared;

namespace DroneTube;

/// <summary>The verb 'stock': the pipes and sockets of the catalogue, with their sources.</summary>
internal static class StockCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var command = new Command(
            "stock",
            "The pipes and sockets that parts files can name, each with its source."
        );
        foreach (var option in file.Options)
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var text = Table(file.Catalogue(parsed));
            Answer.Write(parsed, output => output.Write(text));
        });
        return command;
    }

    private static string Table(Catalogue catalogue)
    {
        var lines = new StringBuilder();
        lines.Row("Pipes: a size is a name, never a diameter. Measure; a caliper beats the table.");
        foreach (var pipe in catalogue.Pipes)
        {
            var limits = (pipe.InsideLeast, pipe.InsideMost) is ({ } least, { } most)
                ? $" ({Show.Hundredths(least)} to {Show.Hundredths(most)})"
                : " (limits not known)";
            lines.Row(
                $"  {pipe.Name, -17}{Show.Hundredths(pipe.Outside), 10} outside{Show.Hundredths(pipe.Inside), 10} inside{limits}"
            );
            lines.Paragraph(Source(pipe.Standard, pipe.Edition, pipe.Source, pipe.Certainty), 19, 19);
        }

        lines.Row();
        lines.Row("Sockets");
        foreach (var socket in catalogue.Sockets)
        {
            lines.Row(
                $"  {socket.Name, -17}{Show.Hundredths(socket.Entrance), 10} entrance, {Show.Hundredths(socket.Bottom)} bottom, {Show.Hundredths(socket.Depth)} deep"
            );
            lines.Paragraph(Source(socket.Standard, socket.Edition, socket.Source, socket.Certainty), 19, 19);
        }

        return lines.ToString();
    }

    private static string Source(string standard, string edition, string source, DataCertainty certainty) =>
        $"{standard}, edition {edition}; {source}"
        + (certainty is DataCertainty.Memory or DataCertainty.Inferred ? ": not confirmed, measure" : "");
}
