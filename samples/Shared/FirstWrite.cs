using System.Text;

namespace Shared;

/// <summary>A writer that does something before the first of anything is written to it.</summary>
internal sealed class FirstWrite : TextWriter
{
    private readonly TextWriter inner;
    private Action? first;

    public FirstWrite(TextWriter inner, Action first)
    {
        (this.inner, this.first) = (inner, first);
        NewLine = inner.NewLine;
    }

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value)
    {
        Begin();
        inner.Write(value);
    }

    public override void Write(string? value)
    {
        Begin();
        inner.Write(value);
    }

    public override void Write(char[] buffer, int index, int count)
    {
        Begin();
        inner.Write(buffer, index, count);
    }

    public override void Write(ReadOnlySpan<char> buffer)
    {
        Begin();
        inner.Write(buffer);
    }

    public override void Flush() => inner.Flush();

    private void Begin()
    {
        first?.Invoke();
        first = null;
    }
}
