using System.Globalization;
using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Tests.Facts;

/// <summary>Files of an invented laboratory, stored as an intake stores them.</summary>
internal static class FactFiles
{
    public static readonly DateTimeOffset Now = new(2026, 1, 14, 15, 30, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static Task<(SourceFile File, FactCounts Counts)> StoreAsync(ScratchWarehouse scratch, string name, params IEnumerable<NewFact> facts) =>
        StoreAsync(scratch.Warehouse, name, facts);

    public static Task<(SourceFile File, FactCounts Counts)> StoreAsync(LabWarehouse warehouse, string name, params IEnumerable<NewFact> facts) =>
        warehouse.WriteAsync(session => StoreAsync(warehouse, session, name, facts), Stop);

    public static async Task<(SourceFile File, FactCounts Counts)> StoreAsync(
        LabWarehouse warehouse, WarehouseSession session, string name, IEnumerable<NewFact> facts)
    {
        var file = Ledger(name);
        var id = await FileLedgerStore.InsertAsync(session, file);
        using var loader = warehouse.Dialect.CreateFactLoader(session);
        loader.Begin(id);
        foreach (var fact in facts)
        {
            loader.Add(fact);
        }

        var counts = await loader.CompleteAsync();
        file = file with { FileId = id, FirstReadingId = counts.FirstReadingId, LastReadingId = counts.LastReadingId };
        await FileLedgerStore.SettleAsync(session, file);
        await FileLedgerStore.InsertArrivalAsync(session, new Arrival { FileId = id, Folder = "sugar", Name = name, ModifiedAt = Now, ArrivedAt = Now });
        return (file, counts);
    }

    public static SourceFile Ledger(string name) => new()
    {
        Sha256 = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(name))),
        Kind = "sugar",
        Name = name,
        ArchivedAs = name,
        TakenAt = Now,
        State = FileState.Stored,
        Profile = "bench-sugars",
        ProfileVersion = 3,
    };

    public static NewFact Reading(string rowKey, decimal value, string barcode = "S26P01T03R2C") => new(
        FactSubject.Sample, 2, "SUG-1", "r1", rowKey, QuantityCatalogue.GlucoseInExtract.Id, barcode, null, value, false,
        value.ToString(CultureInfo.InvariantCulture), "g/L", "A", 1, null, null, "technician 1", Now, "2026-01-14 09:30:00");

    public static NewFact Control(string rowKey, decimal value, string material = "QC-1") =>
        Reading(rowKey, value) with { Subject = FactSubject.Control, Barcode = null, Material = material, Extract = null };

    public static NewFact Fry(decimal value) => Reading("batch 1", value) with
    {
        Subject = FactSubject.FryBatch,
        Instrument = "FRY-1",
        Run = "batch 1",
        QuantityId = QuantityCatalogue.FryTime.Id,
        Barcode = null,
        Extract = null,
        Replicate = null,
    };

    public static Task<IReadOnlyList<StoredFact>> ListAsync(ScratchWarehouse scratch, string table = "reading") => scratch.Warehouse.ReadAsync<IReadOnlyList<StoredFact>>(
        async session => Dapper.SqlMapper.AsList(await Dapper.SqlMapper.QueryAsync<StoredFact>(
            session.Connection,
            $"select f.reading_id as Id, cast(f.row_key as nvarchar(200)) as RowKey, f.value, f.standing, s.name as [File], f.line from {table} f join source_file s on s.file_id = f.file_id order by f.reading_id")),
        Stop);

    public static Task StandAsync(ScratchWarehouse scratch, string rowKey, Standing standing) => scratch.Warehouse.WriteAsync(
        session => Dapper.SqlMapper.ExecuteAsync(
            session.Connection, "update reading set standing = @standing where cast(row_key as nvarchar(200)) = @rowKey", new { standing = (int)standing, rowKey }, session.Transaction),
        Stop);
}
