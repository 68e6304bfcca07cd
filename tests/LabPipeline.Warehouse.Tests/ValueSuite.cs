using Dapper;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Results;
using LabPipeline.Warehouse.Tests.Facts;

namespace LabPipeline.Warehouse.Tests;

/// <summary>A value comes back as it was written, the same from every database.</summary>
public abstract class ValueSuite(DialectName store)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("0")]
    [InlineData("250")]
    [InlineData("0.052")]
    [InlineData("-0.000000000001")] // 12 decimals
    [InlineData("123456789012345")] // 15 digits
    [InlineData("999.999999999999")]
    public async Task Decimal_OfUpToFifteenDigits_ComesBackExactly(string written)
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var value = decimal.Parse(written, System.Globalization.CultureInfo.InvariantCulture);

        await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", value));

        var stored = Assert.Single(await FactFiles.ListAsync(scratch)).Value;
        Assert.Equal((value, written), (stored, stored.ToString(System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public async Task Instant_WithMoreThanMilliseconds_IsCutAndInUtc()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var written = new DateTimeOffset(2026, 1, 14, 23, 59, 59, TimeSpan.FromHours(-6)).AddTicks(9_999_999);

        await scratch.Warehouse.WriteAsync(
            session => HeartbeatStore.BeatAsync(session, new Heartbeat { Service = "s", StartedAt = written, BeatAt = written }), Stop);

        var read = Assert.Single(await scratch.Warehouse.ReadAsync(HeartbeatStore.ListAsync, Stop)).BeatAt;
        Assert.Equal((new DateTimeOffset(2026, 1, 15, 5, 59, 59, 999, TimeSpan.Zero), TimeSpan.Zero), (read, read.Offset));
    }

    [Fact]
    public async Task Texts_WhenSorted_AreInTheOrderOfTheirCodePoints()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        foreach (var service in new[] { "ä", "b", "B", "a-1", "a1", "°C", "Z", "𝛿" })
        {
            await scratch.Warehouse.WriteAsync(
                session => HeartbeatStore.BeatAsync(session, new Heartbeat { Service = service, StartedAt = FactFiles.Now, BeatAt = FactFiles.Now }), Stop);
        }

        Assert.Equal(
            ["B", "Z", "a-1", "a1", "b", "°C", "ä", "𝛿"],
            (await scratch.Warehouse.ReadAsync(HeartbeatStore.ListAsync, Stop)).Select(beat => beat.Service));
    }

    [Fact]
    [Shows(60)]
    public async Task LongText_WithCharactersOfManyScripts_ComesBackWhole()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var message = new Contracts.V1.FileRefused(1, string.Concat(Enumerable.Repeat("‘µg/L’ – 北 𝛿 ", 3000)), "x");

        await scratch.Warehouse.WriteAsync(session => OutboxStore.AddAsync(session, message, "a", FactFiles.Now), Stop);

        var body = Assert.Single(await scratch.Warehouse.ReadAsync(
            session => OutboxStore.ListUnpublishedAsync(session, [typeof(Contracts.V1.FileRefused).FullName!], 1), Stop)).Body;
        Assert.Equal(message, System.Text.Json.JsonSerializer.Deserialize<Contracts.V1.FileRefused>(body));
    }

    [Fact]
    public async Task Nothing_WhenWritten_ComesBackAsNothing()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", 1m) with
        {
            Extract = null,
            Replicate = null,
            Operator = null,
            MeasuredAt = null,
            MeasuredAs = null,
        });

        Assert.Equal(1, await scratch.Warehouse.ReadAsync(
            session => session.Connection.ExecuteScalarAsync<int>(
                """
                select count(*) from reading
                where extract is null and replicate is null and tuber is null and slice is null and operator is null and measured_at is null and measured_as is null
                """),
            Stop));
    }

    [Fact]
    public async Task Repeatability_WithItsFlagAndNumbers_ComesBackAsItWas()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var row = new RepeatabilityRow
        {
            QuantityId = 1,
            Constant = 0.0014m,
            Relative = 0.04m,
            Pairs = 20,
            Provisional = true,
            Source = "duplicates of this season",
            KeptAt = FactFiles.Now,
            KeptBy = "lab manager",
        };

        var kept = await scratch.Warehouse.WriteAsync(session => RepeatabilityStore.KeepAsync(session, row), Stop);

        Assert.Equal(kept, Assert.Single(await scratch.Warehouse.ReadAsync(RepeatabilityStore.ListAsync, Stop)));
    }
}
