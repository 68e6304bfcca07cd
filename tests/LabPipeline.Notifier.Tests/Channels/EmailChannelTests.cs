using LabPipeline.Hosting.Settings;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Settings;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Testing;
using MailKit.Security;
using MimeKit;

namespace LabPipeline.Notifier.Tests.Channels;

public sealed class EmailChannelTests
{
    [Fact]
    public async Task Send_WhenTheServerIsAnIndependentOne_ArrivesAsTextAndHtmlUnderItsOwnId()
    {
        await using var server = new MailboxServer();

        var outcome = await SendAsync(server.Port);

        Assert.Equal(SendOutcome.Sent, outcome);
        using var mail = Assert.Single(server.Mails);
        Assert.Equal("[hold] Sample 26K70012C: duplicate glucose disagrees (alert 17)", mail.Subject);
        Assert.Equal("0123456789abcdef0123456789abcdef@lab.example", mail.MessageId);
        Assert.Equal("manager@lab.example", Assert.Single(mail.To.Mailboxes).Address);
        Assert.Equal(NotifierDesk.Start, mail.Date);
        Assert.Equal("auto-generated", mail.Headers[HeaderId.AutoSubmitted]);
        Assert.Contains("limit: 0.012", mail.TextBody, StringComparison.Ordinal);
        Assert.Contains("<p>limit: 0.012</p>", mail.HtmlBody, StringComparison.Ordinal);
    }

    [Theory]
    [Shows(64)]
    [InlineData("", "421 too busy", SendResult.TryLater)]
    [InlineData("", "554 no service", SendResult.TryLater)]
    [InlineData("MAIL", "451 local error", SendResult.TryLater)]
    [InlineData("MAIL", "530 authentication required", SendResult.TryLater)]
    [InlineData("MAIL", "553 sender not allowed", SendResult.Refused)]
    [InlineData("RCPT", "450 greylisted, come again", SendResult.TryLater)]
    [InlineData("RCPT", "550 no such mailbox", SendResult.Refused)]
    [InlineData("DATA", "452 disk full", SendResult.TryLater)]
    [InlineData("DATA", "554 refused", SendResult.Refused)]
    [InlineData(ScriptedSmtpServer.EndOfData, "451 scanner down", SendResult.TryLater)]
    [InlineData(ScriptedSmtpServer.EndOfData, "554 content refused", SendResult.Refused)]
    public async Task Send_WhenTheServerSaysNo_FourMeansLaterAndFiveMeansNever(string command, string answer, SendResult expected)
    {
        // RFC 5321, 4.2.1: 4yz may succeed when repeated, 5yz should not be repeated. Greeting and log-in are the server's, not the mail's.
        await using var server = new ScriptedSmtpServer();
        server.Answers[command] = answer;

        var outcome = await SendAsync(server.Port);

        Assert.Equal(expected, outcome.Result);
        Assert.Contains(answer[4..], outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(63)]
    public async Task Send_WhenTheLineIsCutAfterTheFinalDot_TriesAgainUnderTheSameMessageId()
    {
        // RFC 1047: the server has the mail, the client cannot know it.
        await using var server = new ScriptedSmtpServer();
        server.HangUpAt.Add(ScriptedSmtpServer.EndOfData);

        var first = await SendAsync(server.Port);
        server.HangUpAt.Clear();
        var second = await SendAsync(server.Port);

        Assert.Equal(SendResult.TryLater, first.Result);
        Assert.Equal(SendResult.Sent, second.Result);
        Assert.Equal(2, server.Messages.Count);
        Assert.All(server.Messages, mail => Assert.Contains("Message-Id: <0123456789abcdef0123456789abcdef@lab.example>", mail, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Send_WhenTheLineIsCutAtQuit_CountsAsSent()
    {
        await using var server = new ScriptedSmtpServer();
        server.HangUpAt.Add("QUIT");

        Assert.Equal(SendOutcome.Sent, await SendAsync(server.Port));
    }

    [Theory]
    [InlineData("421 going down")]
    [InlineData("no answer of a mail server")]
    public async Task Send_WhenTheFarewellIsAnsweredWrongly_CountsAsSent(string answer)
    {
        await using var server = new ScriptedSmtpServer();
        server.Answers["QUIT"] = answer;

        Assert.Equal(SendOutcome.Sent, await SendAsync(server.Port));
    }

    [Fact]
    public async Task Send_WhenTheFarewellIsNotAnsweredInTime_CountsAsSent()
    {
        await using var server = new ScriptedSmtpServer();
        server.FallSilentAt.Add("QUIT");
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var sending = ChannelAt(server.Port).SendAsync([Samples.Alert], limit.Token);
        await Wait.UntilAsync(() => Task.FromResult(server.Messages.Count == 1));
        await Task.Delay(TimeSpan.FromMilliseconds(300), TestContext.Current.CancellationToken);
        Assert.False(sending.IsCompleted);

        await limit.CancelAsync();

        Assert.Equal(SendOutcome.Sent, await sending);
    }

    [Fact]
    public async Task Send_WhenTheServerFallsSilent_EndsWithItsTimeLimit()
    {
        await using var server = new ScriptedSmtpServer();
        server.FallSilentAt.Add("DATA");
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromMilliseconds(300));

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => ChannelAt(server.Port).SendAsync([Samples.Alert], limit.Token));
    }

    [Fact]
    public async Task Send_WhenNobodyListens_TriesLater()
    {
        var server = new ScriptedSmtpServer();
        var port = server.Port;
        await server.DisposeAsync();

        Assert.Equal(SendResult.TryLater, (await SendAsync(port)).Result);
    }

    [Fact]
    public async Task Send_WhenTheServerOffersNoEncryptionThoughAskedFor_SendsNothingInTheOpen()
    {
        await using var server = new ScriptedSmtpServer();

        var outcome = await ChannelAt(server.Port, SecureSocketOptions.StartTls).SendAsync([Samples.Alert], TestContext.Current.CancellationToken);

        Assert.Equal(SendResult.TryLater, outcome.Result);
        Assert.Empty(server.Messages);
    }

    [Fact]
    [Shows(67)]
    public async Task Send_WhenTheHeadlineTriesToAddHeaders_AddsNone()
    {
        await using var server = new MailboxServer();
        var hostile = new string('x', 30) + "\r\nBcc: thief@evil.example\r\n\r\nbody \u001b[31mred " + new string('y', 1_000_000);

        // Rows pass the notice writer; a channel must hold even without it.
        await SendAsync(server.Port, Samples.Alert with { Headline = hostile });

        using var mail = Assert.Single(server.Mails);
        Assert.Empty(mail.Bcc);
        Assert.DoesNotContain(mail.Headers, header => header.Field == "Bcc");
        Assert.DoesNotContain("\r", mail.Subject, StringComparison.Ordinal);
        Assert.InRange(mail.Subject!.Length, 1, 200);
    }

    [Fact]
    public async Task Send_WhenTheServerEchoesThePassword_TheReasonHidesIt()
    {
        await using var server = new ScriptedSmtpServer();
        server.Answers["EHLO"] = "250-scripted\r\n250 AUTH PLAIN";
        server.Answers["AUTH"] = "535 wrong: hunter-seven-42";

        var outcome = await ChannelAt(server.Port, user: "lab").SendAsync([Samples.Alert], TestContext.Current.CancellationToken);

        Assert.Equal(SendResult.TryLater, outcome.Result);
        Assert.DoesNotContain("hunter-seven-42", outcome.Reason, StringComparison.Ordinal);
    }

    private static Task<SendOutcome> SendAsync(int port, Notice? notice = null) =>
        ChannelAt(port).SendAsync([notice ?? Samples.Alert], TestContext.Current.CancellationToken);

    private static EmailChannel ChannelAt(int port, SecureSocketOptions security = SecureSocketOptions.None, string? user = null) => new(
        RecordingChannel.PolicyOf("email:lab-manager"),
        new SmtpTarget
        {
            Host = "127.0.0.1",
            Port = port,
            Security = security,
            From = MailboxAddress.Parse("quality@lab.example"),
            User = user,
            Password = user is null ? null : new Secret("hunter-seven-42"),
        },
        MailboxAddress.Parse("manager@lab.example"),
        boardUrl: null);
}
