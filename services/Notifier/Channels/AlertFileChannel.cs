using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Channels;

/// <summary>The complete record of alerts beside the warehouse: one JSON object a line, on the disk before it counts as delivered.</summary>
/// <remarks>A crash can leave a line twice (the same id) or half (then a new line follows); readers skip what does not parse.</remarks>
public sealed class AlertFileChannel(ChannelPolicy policy, string path) : IAlertChannel
{
    public const string Name = "alert-file";

    public const string FileName = "alerts.jsonl";

    private const byte NewLine = (byte)'\n';

    public ChannelPolicy Policy => policy;

    public async Task<SendOutcome> SendAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read);
        await using (file.ConfigureAwait(false))
        {
            using var lines = new MemoryStream();
            if (EndsTorn(file))
            {
                lines.WriteByte(NewLine);
            }

            foreach (var notice in notices)
            {
                lines.Write(NoticeJson.Write(notice));
                lines.WriteByte(NewLine);
            }

            await file.WriteAsync(lines.GetBuffer().AsMemory(0, (int)lines.Length), cancellationToken).ConfigureAwait(false);
            file.Flush(flushToDisk: true);
        }

        return SendOutcome.Sent;
    }

    private static bool EndsTorn(FileStream file)
    {
        if (file.Length == 0)
        {
            return false;
        }

        file.Seek(-1, SeekOrigin.End);
        return file.ReadByte() != NewLine;
    }
}
