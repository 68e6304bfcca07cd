using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Channels;

/// <summary>Posts a signed JSON object to a program, after the Standard Webhooks specification.</summary>
/// <remarks>Taken is what is answered with 2xx; 410 ends the channel; everything else, redirects included, is tried again.</remarks>
public sealed class WebhookChannel(ChannelPolicy policy, Uri target, byte[] key, HttpMessageInvoker http, TimeProvider time) : IAlertChannel
{
    public ChannelPolicy Policy => policy;

    public async Task<SendOutcome> SendAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        using var request = Compose(notices[0]);
        try
        {
            using var answer = await http.SendAsync(request, cancellationToken).ConfigureAwait(false);
            return Judge(answer);
        }
        catch (Exception exception) when (exception is HttpRequestException or IOException)
        {
            return SendOutcome.TryLater($"{target.Host}: {exception.GetBaseException().Message}");
        }
    }

    private HttpRequestMessage Compose(Notice notice)
    {
        var body = NoticeJson.Write(notice);
        var id = "msg_" + notice.Id;
        var seconds = time.GetUtcNow().ToUnixTimeSeconds();
        var request = new HttpRequestMessage(HttpMethod.Post, target)
        {
            Content = new ByteArrayContent(body) { Headers = { ContentType = new MediaTypeHeaderValue("application/json") } },
        };
        request.Headers.Add("webhook-id", id);
        request.Headers.Add("webhook-timestamp", seconds.ToString(CultureInfo.InvariantCulture));
        request.Headers.Add("webhook-signature", WebhookSignature.Sign(key, id, seconds, body));
        return request;
    }

    private SendOutcome Judge(HttpResponseMessage answer)
    {
        var reason = $"{target.Host} answered {((int)answer.StatusCode).ToString(CultureInfo.InvariantCulture)}";
        return answer switch
        {
            { IsSuccessStatusCode: true } => SendOutcome.Sent,
            { StatusCode: HttpStatusCode.Gone } => SendOutcome.Gone(reason),
            _ => SendOutcome.TryLater(reason, RetryAfter(answer)),
        };
    }

    private TimeSpan? RetryAfter(HttpResponseMessage answer) =>
        answer.Headers.RetryAfter is { } asked ? asked.Delta ?? asked.Date - time.GetUtcNow() : null;
}
