namespace AirColumn.Tables;

/// <summary>Every table of computed numbers in the engine. Those that are published by others are not among them.</summary>
internal static class AllTables
{
    public static IReadOnlyList<Table> In(string repository) =>
        [
            .. UnflangedEnd.Tables,
            .. BaffledEnd.Tables,
            .. Rims.Tables(repository),
            .. TaperedMouths.Tables(repository),
            .. Steps.Tables,
            .. CylinderWall.Tables,
        ];
}
