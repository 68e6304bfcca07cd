namespace LabPipeline.Quality.Rules;

/// <summary>A message was tried several times and could not be handled: something that should have been computed or told was not.</summary>
public sealed class ParkedMessageRule : IRule<ParkedMessagesEvidence>
{
    public string Name => "parked message";

    public IEnumerable<Finding> Evaluate(ParkedMessagesEvidence evidence)
    {
        if (evidence.Count == 0)
        {
            yield break;
        }

        var messages = evidence.Count == 1 ? "1 message" : NumberText.Invariant($"{evidence.Count} messages");
        yield return Findings.Of(
            this, evidence, FindingLevel.Hold, "queue",
            $"{evidence.Title} holds {messages} that could not be handled, the oldest since {NumberText.Invariant($"{evidence.OldestParkedAt.UtcDateTime:yyyy-MM-dd HH:mm} UTC")}: {evidence.OldestReason}",
            "'station parked' lists them; mend the cause, then 'station replay --all' hands them over again. Until then results or notices are missing.",
            new FactSheet().Add("queue", evidence.Endpoint).Add("messages", evidence.Count).Add("reason", evidence.OldestReason));
    }
}
