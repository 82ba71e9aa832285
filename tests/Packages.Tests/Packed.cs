using NotebookRunner;

namespace Packages.Tests;

/// <summary>The packages as they are built now, packed once for all tests.</summary>
public sealed class Packed : IDisposable
{
    public Session Session { get; } = Session.Begin();

    public void Dispose() => Session.Dispose();

    /// <summary>An empty folder that finds them.</summary>
    public string Folder(string name) =>
        Directory.CreateDirectory(Path.Combine(Session.Folder, name)).FullName;
}

[CollectionDefinition(Name)]
public sealed class PackedOnce : ICollectionFixture<Packed>
{
    public const string Name = "packed";
}
