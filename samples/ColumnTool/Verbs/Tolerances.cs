using AirColumn;
using ColumnTool.Questions;

namespace ColumnTool.Verbs;

/// <summary>How far dimensions and air may be off, as answers write it: "length of section 2 ± 0.5 mm".</summary>
internal static class Tolerances
{
    private const string Example = "length of section 1 ± 0.5 mm";
    private const string Normal = "(95 %)";

    private const string Meaning =
        "a tolerance, such as `length of section 1 ± 0.5 mm` or `temperature of the air ± 2 K (95 %)`. Add (95 %) if the limits hold 95 % of a normal distribution. On the command line repeat the option for each";

    private static readonly Kind<Tolerance[]> Kind = Kinds.Many(new TextKind<Tolerance>(Read, Example));

    public static Parameter<Tolerance[]> Needed { get; } =
        new("tolerance", Kind, Meaning, Parameter.Required);

    public static Parameter<Tolerance[]> Optional { get; } = new("tolerance", Kind, Meaning, "none");

    private static Tolerance Read(string text)
    {
        var isNormal = text.TrimEnd().EndsWith(Normal, StringComparison.Ordinal);
        var limits = isNormal ? text.TrimEnd()[..^Normal.Length] : text;
        var parts = limits.Replace("+-", "±", StringComparison.Ordinal).Split('±');
        if (parts.Length != 2)
        {
            throw new FormatException($"'{text}' is not a tolerance; write one such as \"{Example}\".");
        }

        var parameter = ColumnParameter.Parse(parts[0]);
        return new Tolerance(parameter, ParameterText.Value(parameter, parts[1])) { IsNormal = isNormal };
    }
}
