using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Storms;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A channel that remembers what it was given and answers as told.</summary>
internal sealed class RecordingChannel(string name) : IAlertChannel
{
    private static readonly AlertLevel[] AllLevels = Enum.GetValues<AlertLevel>();

    public ChannelPolicy Policy { get; init; } = PolicyOf(name);

    public List<Notice> Notices { get; } = [];

    public IEnumerable<AlertNotice> Alerts => Notices.OfType<AlertNotice>();

    public Func<Notice, CancellationToken, Task<SendOutcome>> Answer { get; set; } = (_, _) => Task.FromResult(SendOutcome.Sent);

    public static ChannelPolicy PolicyOf(string name, params AlertLevel[] levels) => new()
    {
        Name = name,
        Levels = new HashSet<AlertLevel>(levels.Length == 0 ? AllLevels : levels),
        Storm = new StormLimits(),
        Timeout = TimeSpan.FromSeconds(10),
    };

    public void AnswerWith(SendOutcome outcome) => Answer = (_, _) => Task.FromResult(outcome);

    public async Task<SendOutcome> SendAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        Notices.AddRange(notices);
        return await Answer(notices[0], cancellationToken);
    }
}
