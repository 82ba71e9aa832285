using System.Text;
using AirColumn.Workshop.Measurements;
using Shared;

namespace DroneTube;

/// <summary>The file in which a tube's measurements are kept.</summary>
internal sealed class HistoryFile(string path)
{
    private string Draft => $"{path}.new";

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

    /// <summary>Writes all of it under another name: <see cref="Keep"/> puts it in place.</summary>
    public void Prepare(MeasurementHistory history) => Try(() => File.WriteAllText(Draft, history.Write()));

    /// <summary>Puts in place what was prepared, so that a failure before leaves the file as it was.</summary>
    public void Keep() => Try(() => File.Move(Draft, path, true));

    private void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new FailureException($"'{path}' cannot be written: {problem.Message}");
        }
    }
}
