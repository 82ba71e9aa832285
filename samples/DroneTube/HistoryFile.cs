using System.Text;
using AirColumn.Workshop.Measurements;
using Shared;

namespace DroneTube;

/// <summary>The file in which a tube's measurements are kept.</summary>
internal sealed class HistoryFile(string path)
{
    public string Path => path;

    /// <summary>What is kept so far; nothing if there is no file yet.</summary>
    public MeasurementHistory Read()
    {
        if (!File.Exists(path))
        {
            return MeasurementHistory.Empty;
        }

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
            return MeasurementHistory.Read(text);
        }
        catch (FormatException problem)
        {
            throw new BadInputException(
                $"{path}: {problem.Message} Mend it, or name another file with --history."
            );
        }
    }

    /// <summary>Writes all of it; it takes the file's place when it is kept.</summary>
    public DraftFile Begin(MeasurementHistory history) =>
        DraftFile.Begin(path, stream => stream.Write(Encoding.UTF8.GetBytes(history.Write())));
}
