using System.Security.Cryptography;
using System.Text;
using AirColumn.Documents;

namespace AirColumn.Studies;

/// <summary>
/// A map of a design space: a column, the parameters that change, and the questions about each resulting column. It is read from a study document.
/// Immutable; safe to share between threads.
/// </summary>
/// <remarks>
/// Item k depends on the document and on k alone, not on which items were computed before it, where, or by how many threads. So any part of a study
/// can be computed anywhere, and again. Answers are the same to the last digit if three things are the same: the build of the library, the
/// width of the processor's vectors, and the system's mathematical functions.
/// </remarks>
public sealed class Study
{
    private readonly byte[] canonical;
    private readonly StudyParameter[] parameters;
    private readonly Column column;

    internal Study(
        string? name,
        ColumnDocument document,
        StudyParameter[] parameters,
        StudyPoints? points,
        StudyAnswers answers,
        ReadOnlyMemory<byte> canonical
    )
    {
        (Name, Document, Points, Answers) = (name, document, points, answers);
        this.parameters = parameters;
        this.canonical = canonical.ToArray();
        column = document.ToColumn();
        Count = parameters.Aggregate(points?.Count ?? 1, (all, one) => all * (one.Steps ?? 1));
        Fields =
        [
            .. parameters.Select(parameter => new StudyField(
                $"{parameter.Slug}{(parameter.Parameter.Unit.Length == 0 ? "" : "_")}{StudyAnswers.Small(parameter.Parameter.Unit)}",
                parameter.Parameter.Unit,
                $"the {parameter}"
            )),
            .. answers.Fields(parameters),
        ];
    }

    /// <summary>Its name for people; null if it has none.</summary>
    public string? Name { get; }

    /// <summary>The column that the study begins with.</summary>
    public ColumnDocument Document { get; }

    /// <summary>The parameters that are changed, in their order in the document.</summary>
    public IReadOnlyList<StudyParameter> Parameters => parameters;

    /// <summary>The rule by which points are drawn; null if every parameter has steps or values.</summary>
    public StudyPoints? Points { get; }

    /// <summary>The questions asked of each column.</summary>
    public StudyAnswers Answers { get; }

    /// <summary>The number of items: every combination of the steps, each with every drawn point.</summary>
    public long Count { get; }

    /// <summary>The numbers of each row: the values of the parameters, then the answers.</summary>
    public IReadOnlyList<StudyField> Fields { get; }

    /// <summary>Reads a study document.</summary>
    /// <param name="json">The text: at most 16 MiB as UTF-8.</param>
    /// <returns>The study.</returns>
    /// <exception cref="ArgumentNullException">The text is null.</exception>
    /// <exception cref="ColumnDocumentException">
    /// The text is not a study document; the message names the place, the value and the allowed values.
    /// </exception>
    public static Study Parse(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return StudyReader.Read(Encoding.UTF8.GetBytes(json));
    }

    /// <summary>Reads a study document from UTF-8 text.</summary>
    /// <param name="utf8">The text: at most 16 MiB.</param>
    /// <returns>The study.</returns>
    /// <exception cref="ColumnDocumentException">
    /// The text is not a study document; the message names the place, the value and the allowed values.
    /// </exception>
    public static Study Parse(ReadOnlySpan<byte> utf8) => StudyReader.Read(utf8.ToArray());

    /// <summary>The values of the parameters in an item, in the order of <see cref="Parameters"/>, each in its unit.</summary>
    /// <returns>One value for each parameter.</returns>
    /// <remarks>
    /// Drawn points change fastest: neighbouring items differ in their point, and every combination of steps has the same points. Among parameters
    /// with steps the last one changes fastest.
    /// </remarks>
    /// <param name="item">The number of the item: 0 is the first.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such item.</exception>
    public double[] Values(long item)
    {
        if (item < 0 || item >= Count)
        {
            throw new ArgumentOutOfRangeException(
                nameof(item),
                item,
                $"item is {item}; allowed is 0 to {Count - 1}."
            );
        }

        var drawn = Points?.Count ?? 1;
        var point = item % drawn;
        var step = item / drawn;
        var values = new double[parameters.Length];
        var dimension = parameters.Count(parameter => parameter.Steps is null);
        for (var i = parameters.Length - 1; i >= 0; i--)
        {
            var spread = parameters[i].Spread;
            if (spread.Steps is { } steps)
            {
                values[i] = spread.AtStep((int)(step % steps));
                step /= steps;
            }
            else
            {
                values[i] = spread.Quantile(Points!.At(point, --dimension));
            }
        }

        return values;
    }

    /// <summary>The column of an item.</summary>
    /// <param name="item">The number of the item: 0 is the first.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such item.</exception>
    /// <exception cref="ArgumentException">Its values make no valid column; the message names the value and the allowed range.</exception>
    public Column ColumnOf(long item) => ColumnWith(Values(item));

    /// <summary>Computes an item.</summary>
    /// <param name="item">The number of the item: 0 is the first.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>Its row. Numbers that cannot be computed are missing, and <see cref="StudyRow.Error"/> gives the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such item.</exception>
    public StudyRow Answer(long item, CancellationToken cancellationToken = default)
    {
        var values = Values(item);
        var numbers = new double[Fields.Count];
        Array.Fill(numbers, double.NaN);
        values.CopyTo(numbers, 0);
        var asking = new ItemQuestions(
            Answers,
            parameters,
            numbers.AsMemory(values.Length),
            cancellationToken
        );
        return asking.Ask(() => ColumnWith(values)).Row(item, numbers);
    }

    /// <summary>
    /// A hash that identifies the document: the SHA-256 of its canonical form after RFC 8785, as 64 hexadecimal digits. It does not depend
    /// on spaces or on the order of members; quantities count as they are written.
    /// </summary>
    /// <returns>64 hexadecimal digits.</returns>
    public string Sha256() => Convert.ToHexStringLower(SHA256.HashData(canonical));

    /// <summary>The document in its canonical form, UTF-8.</summary>
    /// <returns>The bytes of the document.</returns>
    public byte[] ToUtf8() => [.. canonical];

    /// <summary>Its name and the number of items.</summary>
    /// <returns>Name and number of items, as text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Name ?? "study"}, {Count} items");

    private Column ColumnWith(double[] values)
    {
        var parts = column.Parts;
        for (var i = 0; i < parameters.Length; i++)
        {
            var parameter = parameters[i].Parameter;
            try
            {
                parts = parameter.With(parts, values[i]);
            }
            catch (ArgumentException problem)
            {
                throw new ArgumentException($"{parameter}: {OneLine.Of(problem)}", problem);
            }
        }

        return column.With(parts);
    }
}
