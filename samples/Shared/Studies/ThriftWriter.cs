using System.Text;

namespace Shared.Studies;

/// <summary>Writes a struct in the compact protocol of Apache Thrift, as far as Parquet needs it.</summary>
internal sealed class ThriftWriter : IDisposable
{
    private const int TypeI32 = 5;
    private const int TypeI64 = 6;
    private const int TypeBinary = 8;
    private const int TypeList = 9;
    private const int TypeStruct = 12;

    private readonly MemoryStream bytes = new();
    private readonly Stack<int> outer = new();
    private int last; // the field before, in the struct that is written

    /// <summary>A number of 32 bits.</summary>
    public void Int(int field, int value)
    {
        Field(field, TypeI32);
        ZigZag(value);
    }

    /// <summary>A number of 64 bits.</summary>
    public void Long(int field, long value)
    {
        Field(field, TypeI64);
        ZigZag(value);
    }

    /// <summary>A text.</summary>
    public void Text(int field, string text)
    {
        Field(field, TypeBinary);
        Text(text);
    }

    /// <summary>A list of numbers.</summary>
    public void Ints(int field, params ReadOnlySpan<int> values)
    {
        Field(field, TypeList);
        ListOf(values.Length, TypeI32);
        foreach (var value in values)
        {
            ZigZag(value);
        }
    }

    /// <summary>A list with one text.</summary>
    public void Texts(int field, string text)
    {
        Field(field, TypeList);
        ListOf(1, TypeBinary);
        Text(text);
    }

    /// <summary>A list of structs, each of which <see cref="BeginItem"/> begins.</summary>
    public void List(int field, int count)
    {
        Field(field, TypeList);
        ListOf(count, TypeStruct);
    }

    /// <summary>Begins a struct.</summary>
    public void Begin(int field)
    {
        Field(field, TypeStruct);
        BeginItem();
    }

    /// <summary>Begins a struct of a list.</summary>
    public void BeginItem()
    {
        outer.Push(last);
        last = 0;
    }

    /// <summary>Ends the struct that was begun last.</summary>
    public void End()
    {
        bytes.WriteByte(0);
        last = outer.Pop();
    }

    /// <summary>Ends the outermost struct.</summary>
    public byte[] Complete()
    {
        bytes.WriteByte(0);
        return bytes.ToArray();
    }

    public void Dispose() => bytes.Dispose();

    /// <summary>A number in groups of seven bits, the lowest first.</summary>
    public static void Varint(Stream stream, ulong value)
    {
        while (value >= 0x80)
        {
            stream.WriteByte((byte)(value | 0x80));
            value >>= 7;
        }

        stream.WriteByte((byte)value);
    }

    private void Field(int field, int type)
    {
        bytes.WriteByte((byte)((field - last) << 4 | type));
        last = field;
    }

    private void ListOf(int count, int type)
    {
        bytes.WriteByte((byte)(Math.Min(count, 15) << 4 | type));
        if (count >= 15)
        {
            Varint(bytes, (ulong)count);
        }
    }

    private void Text(string text)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        Varint(bytes, (ulong)utf8.Length);
        bytes.Write(utf8);
    }

    private void ZigZag(long value) => Varint(bytes, (ulong)(value << 1 ^ value >> 63));
}
