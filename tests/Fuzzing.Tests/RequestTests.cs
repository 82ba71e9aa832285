using System.Text;
using System.Text.Json;
using ColumnTool.Lines;

namespace Fuzzing.Tests;

/// <summary>
/// Lines that are nearly requests, and lines that are nothing: each has one answer, which is JSON, and none is a fault of the program.
/// </summary>
public class RequestTests
{
    private const string Tube =
        """{"column":1,"sections":[{"shape":"cylinder","diameter":"30 mm","length":"1 m"}],"farEnd":{"kind":"open"}}""";

    private const string Whistle =
        """{"column":2,"blownEnd":"open","correction":"8 mm","sections":[{"shape":"cylinder","diameter":"15 mm","length":"300 mm"}],"farEnd":{"kind":"open"},"holes":[{"position":"170 mm","diameter":"7 mm","height":"2 mm"}],"fingerings":[{"name":"low","holes":"x"}]}""";

    private static readonly string[] Examples =
    [
        $$"""{"id":0,"verb":"resonances","document":{{Tube}},"count":2,"reference":442,"gradients":true}""",
        $$"""{"id":0,"verb":"column","document":{{Whistle}},"fingering":"low","wavefronts":"plane","modes":2}""",
        $$"""{"id":0,"verb":"impedance","document":{{Tube}},"at":[30,33.17],"timeLimit":0.5}""",
        $$"""{"id":0,"verb":"reflection","document":{{Tube}},"from":20,"to":60,"points":5}""",
        $$"""{"id":0,"verb":"inside","document":{{Whistle}},"frequency":"0.5 kHz","places":["0 mm","25 cm"]}""",
        $$"""{"id":0,"verb":"length","document":{{Tube}},"section":1,"pitch":"C3","temperament":[0,-24,-7,10,-14,-3,-21,-3,-27,-10,7,-17]}""",
        $$"""{"id":0,"verb":"uncertainty","document":{{Tube}},"tolerance":["length of section 1 ± 1 mm","temperature of the air ± 2 K (95 %)"],"count":1}""",
        $$"""{"id":0,"verb":"trim","document":{{Tube}},"section":1,"pitch":"F2","step":"5 mm","rows":3,"playedAbove":20}""",
        $$"""{"id":0,"verb":"shape","document":{{Tube}},"choose":["length of section 1, 300 mm to 700 mm"],"reach":["resonance 1 on E3; weight 2","total length of 640 mm"],"starts":1,"steps":3}""",
        """{"id":0,"verb":"air","temperature":"12 °C","humidity":"95 %"}""",
        """{"id":0,"verb":"cancel","question":7}""",
        $$"""{"id":0,"verb":"quality","document":{{Tube}},"count":2,"onlyOdd":true}""",
    ];

    private static readonly string[] Words =
    [
        "{",
        "}",
        "[",
        "]",
        "\"",
        ":",
        ",",
        "\n",
        "null",
        "true",
        "1e999",
        "-1",
        "1e-320",
        "99999999999999999999",
        "\\ud800",
        "\\u0000",
        "[[[[[[[[[[[[[[[[[[",
        "\"id\":",
        "\"verb\":\"power\"",
        "\"file\":\"/\"",
        "\"document\":",
        "diameter of section 1",
        "length of section 0",
        "± 0 mm",
        "(95 %)",
        "; fingered xo",
        "interval from 2 to 1 of 9 cents",
        "\"NaN mm\"",
        "\"∞ mm\"",
        "xxx ooo",
        "\"multimodal\"",
    ];

    [Fact]
    public void Every_line_has_one_answer_that_is_no_fault()
    {
        var lines = ReaderTests.Share(30_000) * ReaderTests.Times;
        var mutator = new Mutator(
            24,
            // Under many ids, or most would be refused for that of another.
            [.. Enumerable.Range(1, 600).Select(id => Encoding.UTF8.GetBytes(WithId(id)))],
            [.. Words.Select(Encoding.UTF8.GetBytes)]
        );
        var asked = new Asked(lines, mutator);
        var answers = new AnswerCheck();
        using (var server = new LineServer(answers, new LineServerOptions(2, 0.2, false)))
        {
            server.Run(asked);
        }

        Assert.Equal("", answers.Wrong);
        Assert.Equal(asked.Questions, answers.Answers);
        // Both ways are taken.
        Assert.InRange(answers.Answered, lines / 10, lines);
    }

    private static string WithId(int id) =>
        Examples[id % Examples.Length].Replace("\"id\":0", $"\"id\":{id}", StringComparison.Ordinal);

    // It takes no more memory than the longest line that is allowed.
    [Fact]
    public void A_line_without_end_is_refused_and_let_go()
    {
        var answers = new AnswerCheck();
        var line = new Endless(200_000_000);
        using (var server = new LineServer(answers, new LineServerOptions(1, 1, false)))
        {
            server.Run(line);
        }

        Assert.Equal(("", 1, 0), (answers.Wrong, answers.Answers, answers.Answered));
        // The buffer doubles up to twice the longest line; the whole line would take 256 MiB.
        Assert.InRange(line.MostMemory, 1, 150_000_000);
    }

    /// <summary>A line each, made when it is read: mutants, noise, and requests with another digit somewhere, which may be sound.</summary>
    private sealed class Asked(int lines, Mutator mutator) : Source
    {
        private readonly Random random = new(7);
        private byte[] line = [];
        private int made;
        private int at;

        /// <summary>How many lines there were that are not blank.</summary>
        public int Questions { get; private set; }

        public override int Read(Span<byte> buffer)
        {
            if (at == line.Length)
            {
                if (made == lines)
                {
                    return 0;
                }

                line = [.. Next(made++), (byte)'\n'];
                at = 0;
                Questions += Encoding
                    .Latin1.GetString(line)
                    .Split('\n')
                    .Count(part => part.Trim(' ', '\t', '\r').Length > 0);
            }

            var count = Math.Min(buffer.Length, line.Length - at);
            line.AsSpan(at, count).CopyTo(buffer);
            at += count;
            return count;
        }

        private byte[] Next(int number) =>
            (number % 10) switch
            {
                0 => Noise(),
                < 4 => OtherDigit(WithId(number + 1000)),
                _ => mutator.Next(),
            };

        private byte[] OtherDigit(string request)
        {
            var bytes = Encoding.UTF8.GetBytes(request);
            var digits = Enumerable
                .Range(0, bytes.Length)
                .Where(i => char.IsAsciiDigit((char)bytes[i]))
                .ToList();
            bytes[digits[random.Next(digits.Count)]] = (byte)('0' + random.Next(10));
            return bytes;
        }

        private byte[] Noise()
        {
            var bytes = new byte[random.Next(80)];
            random.NextBytes(bytes);
            return bytes;
        }
    }

    private sealed class Endless(long length) : Source
    {
        private long left = length;

        /// <summary>The most memory that was in use while it was read.</summary>
        public long MostMemory { get; private set; }

        public override int Read(Span<byte> buffer)
        {
            var count = (int)Math.Min(left, buffer.Length);
            buffer[..count].Fill((byte)'[');
            left -= count;
            MostMemory = Math.Max(MostMemory, GC.GetTotalMemory(false));
            return count;
        }
    }

    private abstract class Source : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public abstract override int Read(Span<byte> buffer);

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }

    /// <summary>Looks at each line that is answered, which comes in one piece.</summary>
    private sealed class AnswerCheck : MemoryStream
    {
        public int Answers { get; private set; }

        public int Answered { get; private set; }

        /// <summary>The first answer that should not be.</summary>
        public string Wrong { get; private set; } = "";

        public override void Write(ReadOnlySpan<byte> line)
        {
            Answers++;
            var text = Encoding.UTF8.GetString(line);
            try
            {
                using var json = JsonDocument.Parse(text);
                var hasAnswer = json.RootElement.TryGetProperty("answer", out _);
                Answered += hasAnswer ? 1 : 0;
                var isFault =
                    !hasAnswer
                    && json.RootElement.GetProperty("error").GetProperty("code").ValueEquals("fault");
                if (isFault || !text.EndsWith('\n'))
                {
                    Wrong = Wrong.Length > 0 ? Wrong : text;
                }
            }
            catch (Exception problem) when (problem is JsonException or KeyNotFoundException)
            {
                Wrong = Wrong.Length > 0 ? Wrong : $"{problem.Message}: {text}";
            }
        }
    }
}
