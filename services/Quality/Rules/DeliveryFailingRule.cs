namespace LabPipeline.Quality.Rules;

/// <summary>Alerts wait on a channel for longer than ten minutes: shown on the board and told on every other channel.</summary>
public sealed class DeliveryFailingRule : IRule<DeliveryEvidence>
{
    public const string RuleName = "delivery failing";

    public string Name => RuleName;

    public IEnumerable<Finding> Evaluate(DeliveryEvidence evidence)
    {
        if (evidence.OldestDueAt is not { } due || evidence.Now - due < TimeSpan.FromMinutes(RuleDefaults.DeliveryMinutes))
        {
            yield break;
        }

        var since = NumberText.Invariant($"{due.UtcDateTime:yyyy-MM-dd HH:mm} UTC");
        yield return Findings.Of(
            this, evidence, FindingLevel.Hold, "channel",
            $"{evidence.Title} has not delivered alerts due since {since}, limit {NumberText.Of(RuleDefaults.DeliveryMinutes)} minutes: {evidence.LastError ?? "no attempt was answered"}",
            "Read the alerts on the board meanwhile; check the channel's host, address and secret. It goes on trying, and this clears by itself.",
            new FactSheet().Add("channel", evidence.Channel).Add("due since", since));
    }
}
