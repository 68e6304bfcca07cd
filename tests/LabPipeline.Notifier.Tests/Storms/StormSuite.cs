using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Testing;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.Storms;

public abstract class StormSuite(DialectName store)
{
    private const int MostGrowth = 20_000_000;

    private readonly RecordingChannel _mail = new("email:lab-manager");

    [Fact]
    [Shows(68)]
    public async Task Storm_WhenAHundredThousandAlertsCome_SendsAtMostTwentyOneMails()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await SeedAsync(desk, _mail.Policy.Name, 100_000);
        var before = GC.GetTotalMemory(forceFullCollection: true);

        await DeliverForThreeMinutesAsync(desk);

        var grown = GC.GetTotalMemory(forceFullCollection: true) - before;
        var digest = Assert.Single(_mail.Notices.OfType<DigestNotice>());
        Assert.InRange(_mail.Notices.Count, 2, 21);
        Assert.Equal(100_000, _mail.Alerts.Count() + digest.Total);
        Assert.Equal(DigestNotice.MostLines, digest.Lines.Count);
        Assert.All(_mail.Alerts, alert => Assert.Equal(AlertLevel.Block, alert.Level));
        Assert.Equal(0, await desk.CountAsync("select count(*) from delivery where state <> 'delivered'"));
        Assert.Equal(digest.Total, await desk.CountAsync($"select count(*) from delivery where digest_id = '{digest.Id}'"));
        Assert.True(grown < MostGrowth, $"Memory grew by {grown} bytes.");
    }

    [Fact]
    public async Task Storm_WhenTwentyThousandAlertsComeToTheFile_WritesEachOnceWithinBoundedMemory()
    {
        using var folder = new ScratchFolder();
        var policy = RecordingChannel.PolicyOf(AlertFileChannel.Name) with { Storm = null, BatchSize = 500, IsCompleteRecord = true };
        await using var desk = await NotifierDesk.CreateAsync(store, new AlertFileChannel(policy, folder.File("alerts.jsonl")));
        await SeedAsync(desk, policy.Name, 20_000);
        var before = GC.GetTotalMemory(forceFullCollection: true);

        await desk.DeliverAsync();

        var grown = GC.GetTotalMemory(forceFullCollection: true) - before;
        Assert.Equal(20_000, File.ReadLines(folder.File("alerts.jsonl")).Distinct().Count());
        Assert.Equal(20_000, File.ReadLines(folder.File("alerts.jsonl")).Count());
        Assert.Equal(0, await desk.CountAsync("select count(*) from delivery where state <> 'delivered'"));
        Assert.True(grown < MostGrowth, $"Memory grew by {grown} bytes.");
    }

    [Fact]
    public async Task Storm_WhenNotesUsedUpTheirShare_ABlockIsStillToldAtOnce()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        for (var id = 1; id <= 40; id++)
        {
            await desk.RaiseAsync(new AlertRow(id) { Level = "note" });
        }

        await desk.DeliverAsync();
        await desk.RaiseAsync(new AlertRow(41) { Level = "block" });
        await desk.DeliverAsync();

        Assert.Equal(16, _mail.Notices.Count);
        Assert.Equal(41, _mail.Alerts.Last().AlertId);
    }

    [Fact]
    public async Task Storm_WhenTheDigestIsNotTaken_IsRepeatedUnderTheSameIdWithTheSameAlerts()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        for (var id = 1; id <= 30; id++)
        {
            await desk.RaiseAsync(new AlertRow(id));
        }

        await desk.DeliverAsync();
        _mail.AnswerWith(SendOutcome.TryLater("451"));
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(2));
        await desk.RaiseAsync(new AlertRow(31));
        _mail.AnswerWith(SendOutcome.Sent);
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(2));

        var digests = _mail.Notices.OfType<DigestNotice>().ToList();
        Assert.Equal(2, digests.Count);
        Assert.Equal(digests[0].Id, digests[1].Id);
        Assert.Equal((15, 15), (digests[0].Total, digests[1].Total));
        Assert.Equal(16, digests[1].FirstAlertId);
    }

    [Fact]
    public async Task Storm_WhenItLastsAnHour_StaysWithinTheLimitInEveryWindow()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        var sent = new List<DateTimeOffset>();
        _mail.Answer = (_, _) =>
        {
            sent.Add(desk.Time.GetUtcNow());
            return Task.FromResult(SendOutcome.Sent);
        };
        for (var minute = 0; minute < 60; minute++)
        {
            for (var id = 1; id <= 10; id++)
            {
                await desk.RaiseAsync(new AlertRow((minute * 10) + id));
            }

            await desk.DeliverAfterAsync(TimeSpan.FromMinutes(1));
        }

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(10));
        Assert.All(sent, at => Assert.InRange(sent.Count(other => other > at.AddMinutes(-10) && other <= at), 1, 21));
        Assert.Equal(600, _mail.Alerts.Count() + _mail.Notices.OfType<DigestNotice>().Sum(digest => digest.Total));
        Assert.DoesNotContain(await desk.DeliveriesAsync(), row => row.Event == "undelivered");
    }

    private static async Task DeliverForThreeMinutesAsync(NotifierDesk desk)
    {
        await desk.DeliverAsync();
        for (var seconds = 0; seconds < 180; seconds += 30)
        {
            await desk.DeliverAfterAsync(TimeSpan.FromSeconds(30));
        }
    }

    // Written by the database itself: how the rows came is not what is tested here.
    private static async Task SeedAsync(NotifierDesk desk, string channel, int alerts)
    {
        const string At = "2026-01-14T09:00:00.000Z";
        await desk.RunAsync(
            $"""
            with recursive number (n) as (select 1 union all select n + 1 from number where n < {alerts})
            insert into qc_alert (alert_id, fingerprint, rule_name, level, scope, barcode, headline, advice, facts, state, times_raised, opened_at, changed_at)
            select n, 'implausible-value|' || n, 'implausible-value', case when n % 3 = 0 then 'block' else 'note' end, 's', '26K70012C',
                   'Sample ' || n || ': glucose 52 mg/g above 20', 'Check the decimal mark of the file.', '{"{}"}', 'open', 1, '{At}', '{At}'
            from number;
            insert into delivery (alert_id, times_raised, event, channel, urgency, state, attempts, due_at, next_attempt_at, created_at)
            select alert_id, 1, 'raised', '{channel}', case level when 'block' then 0 else 2 end, 'pending', 0, '{At}', '{At}', '{At}' from qc_alert
            """);
    }
}
