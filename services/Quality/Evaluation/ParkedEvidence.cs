using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Quality.Evaluation;

/// <summary>One piece of evidence for each queue, however many messages it parked: ten thousand failures are one cause, not ten thousand alerts.</summary>
internal static class ParkedEvidence
{
    public static IReadOnlyList<ParkedMessagesEvidence> Of(IEnumerable<ParkedMessage> parked) =>
    [
        .. parked.GroupBy(message => message.Endpoint, StringComparer.Ordinal).Select(queue =>
        {
            var oldest = queue.MinBy(message => message.ParkedAt)!;
            return new ParkedMessagesEvidence
            {
                Endpoint = queue.Key,
                Count = queue.Count(),
                OldestReason = oldest.Reason,
                OldestParkedAt = oldest.ParkedAt,
            };
        }),
    ];
}
