using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Channels;
using Microsoft.Extensions.Logging.Abstractions;

namespace LabPipeline.Notifier.Tests.Deliveries;

public abstract class ChannelTestSuite(DialectName store)
{
    private readonly RecordingChannel _mail = new("email:lab");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Test_WhenTaken_IsDeliveredOnce()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);

        var test = await TestAsync(desk);
        await SendAsync(desk);

        Assert.Equal((ChannelTestStates.Delivered, null, NotifierDesk.Start), (test.State, test.Reason, test.EndedAt!.Value));
        var notice = Assert.IsType<TestNotice>(Assert.Single(_mail.Notices));
        Assert.Equal(("email:lab", "some.one"), (notice.Channel, notice.AskedBy));
        Assert.Equal(2, await desk.CountAsync("select count(*) from change_log where subject = 'channel:email:lab'"));
    }

    [Fact]
    public async Task Test_WhenRefused_FailsWithTheReasonOnOneLine()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.AnswerWith(SendOutcome.TryLater("550 no\nsuch user"));

        var test = await TestAsync(desk);
        await SendAsync(desk);

        Assert.Equal((ChannelTestStates.Failed, "550 no\\nsuch user"), (test.State, test.Reason));
        Assert.Single(_mail.Notices);
    }

    [Fact]
    public async Task Test_WhenTheChannelThrows_FailsWithTheReason()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.Answer = (_, _) => throw new IOException("disk full");

        Assert.Equal("IOException: disk full", (await TestAsync(desk)).Reason);
    }

    [Fact]
    public async Task Test_WhenTheTargetDoesNotAnswer_FailsAtTheChannelsTimeLimit()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.Answer = async (_, token) =>
        {
            desk.Time.Advance(TimeSpan.FromSeconds(11));
            await Task.Delay(Timeout.Infinite, token);
            return SendOutcome.Sent;
        };

        Assert.Equal("no answer within 10 s", (await TestAsync(desk)).Reason);
    }

    [Fact]
    public async Task Test_OfAChannelThatLeftTheSettings_Fails()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);

        Assert.Equal("the running notifier has no channel of this name", (await TestAsync(desk, "email:gone")).Reason);
    }

    [Fact]
    public async Task Test_NobodyTookUpForTenMinutes_FailsAndIsNotSent()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await AskAsync(desk, "email:lab");
        desk.Time.Advance(ChannelTestWorker.WaitsFor + TimeSpan.FromSeconds(1));

        await SendAsync(desk);

        Assert.Equal("no notifier took it up within 10 minutes", (await NewestAsync(desk)).Reason);
        Assert.Empty(_mail.Notices);
    }

    [Fact]
    public async Task Test_WhileAnotherProcessDelivers_IsLeftToIt()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.RunAsync($"insert into lease (name, holder, expires_at) values ('{ParcelClaim.LeaseName}', 'another', '2026-01-14T10:00:00.000Z')");

        Assert.Equal(ChannelTestStates.Waiting, (await TestAsync(desk)).State);
        Assert.Empty(_mail.Notices);
    }

    [Fact]
    public async Task Channels_WhenWrittenDownAnew_ReplaceThoseThatWere()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        foreach (var name in new[] { "email:old", "email:lab" })
        {
            await desk.Warehouse.WriteAsync(
                session => NoticeChannelStore.ReplaceAsync(session, [new NoticeChannel { Name = name, Levels = "block", NotedAt = NotifierDesk.Start }]), Stop);
        }

        Assert.Equal("email:lab", Assert.Single(await desk.Warehouse.ReadAsync(NoticeChannelStore.ListAsync, Stop)).Name);
    }

    private async Task<ChannelTest> TestAsync(NotifierDesk desk, string channel = "email:lab")
    {
        await AskAsync(desk, channel);
        await SendAsync(desk);
        return await NewestAsync(desk);
    }

    private static Task AskAsync(NotifierDesk desk, string channel) =>
        desk.Warehouse.WriteAsync(session => ChannelTestStore.AskAsync(session, channel, "some.one", desk.Time.GetUtcNow()), Stop);

    private async Task SendAsync(NotifierDesk desk)
    {
        using var worker = new ChannelTestWorker(new ChannelSet([_mail]), desk.Warehouse, desk.Time, NullLogger<ChannelTestWorker>.Instance);
        await worker.SendWaitingAsync(Stop);
    }

    private static async Task<ChannelTest> NewestAsync(NotifierDesk desk) => Assert.Single(await desk.Warehouse.ReadAsync(ChannelTestStore.ListNewestAsync, Stop));
}
