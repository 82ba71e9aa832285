using AirColumn.Documents;

namespace AirColumn.Studies;

/// <summary>Asks a column what its study asks. One that has no answer to one question may have answers to the others.</summary>
internal sealed class ItemQuestions(
    StudyAnswers asked,
    IReadOnlyList<StudyParameter> parameters,
    Memory<double> answers,
    CancellationToken token
)
{
    private const int LongestWarnings = 1000;

    private readonly List<string> warnings = [];
    private readonly List<string> errors = [];
    private string wavefronts = "";

    /// <summary>Makes the column and asks it.</summary>
    public ItemQuestions Ask(Func<Column> make)
    {
        Column? column = null;
        Try("", () => column = make());
        if (column is null)
        {
            return this;
        }

        wavefronts = Vocabulary.Fronts.For(column.Wavefronts) ?? "";
        var place = 0;
        if (asked.Resonances > 0)
        {
            Try("resonances: ", () => AskResonances(column));
            place = asked.NumbersOfResonances(parameters.Count);
        }

        if (asked.Indicators)
        {
            Try("indicators: ", () => Set(place, column.FirstPeakHeight(token)));
            Try("indicators: ", () => Set(place + 1, column.MeanImpedance(token)));
            place += 2;
        }

        if (asked.ImpedanceAtHertz.Count > 0)
        {
            Try("impedance: ", () => AskImpedance(column, place));
        }

        return this;
    }

    /// <summary>The row.</summary>
    public StudyRow Row(long item, double[] numbers) =>
        new(
            item,
            numbers,
            wavefronts,
            OneLine.Of(string.Join(" ", warnings.Distinct()), LongestWarnings),
            string.Join(" ", errors)
        );

    private void AskResonances(Column column)
    {
        var found = column.FirstResonances(asked.Resonances, token);
        warnings.AddRange(found.Warnings);
        var place = 0;
        Fill(true, 0, i => found[i].Frequency.Hertz);
        Fill(asked.Intervals, 1, i => 1200 * Math.Log2(found[i].Frequency / found[0].Frequency));
        Fill(asked.QualityFactors, 0, i => found[i].QualityFactor);
        Fill(asked.Magnitudes, 0, i => found[i].Magnitude);
        if (asked.Gradients)
        {
            var varied = parameters.Select(parameter => parameter.Parameter).ToArray();
            Try(
                "gradients: ",
                () =>
                {
                    foreach (var gradient in column.Gradients(found, varied, cancellationToken: token))
                    {
                        foreach (var number in gradient.HertzPerUnit)
                        {
                            Set(place++, number);
                        }
                    }
                }
            );
        }

        // Fewer than were asked for leave the rest of their fields empty.
        void Fill(bool isAsked, int first, Func<int, double> number)
        {
            if (isAsked)
            {
                for (var i = first; i < found.Count; i++)
                {
                    Set(place + i - first, number(i));
                }

                place += asked.Resonances - first;
            }
        }
    }

    private void AskImpedance(Column column, int place)
    {
        var hertz = asked.ImpedanceAtHertz.ToArray();
        var curve = column.Impedance(FrequencyGrid.FromHertz(hertz), token);
        warnings.AddRange(curve.Warnings);
        for (var i = 0; i < hertz.Length; i++)
        {
            Set(place + 2 * i, curve[i].Real);
            Set(place + 2 * i + 1, curve[i].Imaginary);
        }
    }

    private void Set(int place, double number) =>
        answers.Span[place] = double.IsFinite(number) ? number : double.NaN;

    private void Try(string what, Action action)
    {
        // Whatever an item cannot do is told in its row, and the others go on.
#pragma warning disable CA1031
        try
        {
            action();
        }
        catch (Exception problem) when (problem is not (OperationCanceledException or OutOfMemoryException))
        {
            var isTold =
                problem
                is ArgumentException
                    or ArithmeticException
                    or NotSupportedException
                    or InvalidOperationException;
            errors.Add($"{what}{(isTold ? "" : $"{problem.GetType().Name}: ")}{OneLine.Of(problem)}");
        }
#pragma warning restore CA1031
    }
}
