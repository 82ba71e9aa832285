using System.CommandLine;
using System.Globalization;

namespace Shared;

/// <summary>The option of every verb that computes: how long it may take. A legal question can be one that takes hours.</summary>
internal sealed class TimeLimitOption : Option<double?>
{
    private const double Usual = 120;
    private readonly string expensive;

    /// <summary>Makes the option.</summary>
    /// <param name="expensive">Sentences that say what takes long, and what to do about it.</param>
    public TimeLimitOption(string expensive)
        : base("--time-limit")
    {
        this.expensive = expensive;
        Description = string.Create(
            CultureInfo.InvariantCulture,
            $"How many seconds the computation may take before it is cancelled. [default: {Usual}]"
        );
        Arity = ArgumentArity.ExactlyOne;
        CustomParser = Options.Number("--time-limit", "", 0.1, 1e6, "s").CustomParser;
    }

    /// <summary>The time that was given.</summary>
    public TimeSpan Limit(ParseResult parsed) => TimeSpan.FromSeconds(parsed.GetValue(this) ?? Usual);

    /// <summary>What is said when it is over.</summary>
    public string IsOver(ParseResult parsed)
    {
        var seconds = Limit(parsed).TotalSeconds;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"No answer within {seconds:0.###} s. {expensive} Or give it more time, such as --time-limit {Math.Max(10, 5 * seconds):0}."
        );
    }

    /// <summary>How far the run is, while there is one.</summary>
    public Watch? Running { get; set; }

    /// <summary>Cancelled when the time of a run is over.</summary>
    public static CancellationToken Token(ParseResult parsed) =>
        Of(parsed)?.Running?.Token ?? CancellationToken.None;

    /// <summary>That of a command, if it has one.</summary>
    public static TimeLimitOption? Of(ParseResult parsed) =>
        parsed.CommandResult.Command.Options.OfType<TimeLimitOption>().FirstOrDefault();
}
