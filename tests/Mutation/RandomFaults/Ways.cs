using System.Globalization;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

/// <summary>What may stand in the place of an expression and be wrong.</summary>
internal static class Ways
{
    public static IEnumerable<ExpressionSyntax> Of(ExpressionSyntax place)
    {
        if (place is BinaryExpressionSyntax two)
        {
            foreach (var sign in Instead(two.OperatorToken.Text))
            {
                yield return ParseExpression($"{two.Left} {sign} {two.Right}");
            }
        }
        else if (place is PrefixUnaryExpressionSyntax { OperatorToken.Text: "-" or "!" } one)
        {
            yield return ParseExpression(one.Operand.ToString());
        }
        else if (place is ConditionalExpressionSyntax choice)
        {
            yield return ParseExpression($"!({choice.Condition}) ? {choice.WhenTrue} : {choice.WhenFalse}");
        }
        else if (place is LiteralExpressionSyntax { Token.Value: int or double } number)
        {
            yield return ParseExpression(
                number.Token.Value is int whole
                    ? (whole + 1).ToString(CultureInfo.InvariantCulture)
                    : $"({number} * 1.1)"
            );
        }
        else if (place is InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax member } call)
        {
            var name = member.Name.Identifier.Text switch
            {
                "Min" => "Max",
                "Max" => "Min",
                "First" => "Last",
                "Last" => "First",
                "All" => "Any",
                "Any" => "All",
                "Floor" => "Ceiling",
                "Ceiling" => "Floor",
                _ => null,
            };
            if (name is not null)
            {
                yield return ParseExpression($"{member.Expression}.{name}{call.ArgumentList}");
            }
        }
    }

    private static string[] Instead(string sign) =>
        sign switch
        {
            "+" => ["-"],
            "-" => ["+"],
            "*" => ["/"],
            "/" => ["*"],
            "%" => ["*"],
            "<" => ["<=", ">="],
            ">" => [">=", "<="],
            "<=" => ["<", ">"],
            ">=" => [">", "<"],
            "==" => ["!="],
            "!=" => ["=="],
            "&&" => ["||"],
            "||" => ["&&"],
            _ => [],
        };
}
