using FsCheck.Xunit;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>The reconciliation as a state machine over alerts: what it decides is applied in memory, as the ledger applies it in the warehouse.</summary>
public sealed class ReconciliationTests
{
    [Fact]
    public void Finding_NotSeenBefore_Opens() => Assert.Equal([AlertChangeKind.Open], Kinds([], [Find("a")]));

    [Fact]
    public void Finding_SeenBeforeWithTheSameFacts_ChangesNothing() => Assert.Empty(Kinds([Alert("a")], [Find("a")]));

    [Fact]
    public void Finding_WithOtherFacts_Updates() => Assert.Equal([AlertChangeKind.Update], Kinds([Alert("a")], [Find("a", facts: "2")]));

    [Fact]
    public void Finding_ThatGotWorse_IsRaisedAgain() => Assert.Equal([AlertChangeKind.RaiseAgain], Kinds([Alert("a")], [Find("a", FindingLevel.Block)]));

    [Fact]
    public void Finding_ThatGotBetter_Updates() => Assert.Equal([AlertChangeKind.Update], Kinds([Alert("a")], [Find("a", FindingLevel.Note)]));

    [Fact]
    public void Alert_WithoutItsFinding_Clears() => Assert.Equal([AlertChangeKind.Clear], Kinds([Alert("a")], []));

    [Fact]
    public void Alert_ClearedOrSettledWithoutItsFinding_StaysSo() =>
        Assert.Empty(Kinds([Alert("a", AlertStates.Cleared), Alert("b", AlertStates.Settled)], []));

    [Fact]
    public void Alert_ClearedAndFoundAgain_IsRaisedAgain() => Assert.Equal([AlertChangeKind.RaiseAgain], Kinds([Alert("a", AlertStates.Cleared)], [Find("a")]));

    [Fact]
    public void Alert_SettledAndFoundWithTheSameFacts_StaysSettled() => Assert.Empty(Kinds([Alert("a", AlertStates.Settled)], [Find("a")]));

    [Fact]
    public void Alert_SettledAndFoundWithOtherFacts_IsRaisedAgain() =>
        Assert.Equal([AlertChangeKind.RaiseAgain], Kinds([Alert("a", AlertStates.Settled)], [Find("a", facts: "2")]));

    [Fact]
    public void Alert_WhoseRuleCouldNotBeEvaluated_IsNotCleared() =>
        Assert.Equal([AlertChangeKind.Open], Kinds([Alert("a")], [Find(Finding.NotEvaluatedWindow, FindingLevel.Note)]));

    [Fact]
    public void Headline_LongerThanTheWarehouseHolds_IsRecognisedWhenItComesBack()
    {
        var finding = Find("a") with { Headline = new string('x', 1500) };

        Assert.Empty(Kinds([Alert("a") with { Headline = new string('x', 996) + " ..." }], [finding]));
    }

    [Property]
    public void Findings_WhateverTheirOrder_LeadToTheSameAlerts(int seed)
    {
        var random = new System.Random(seed);
        var (alerts, findings) = (SomeAlerts(random), SomeFindings(random));

        var straight = Apply(alerts, findings);
        var shuffled = Apply(Shuffled(alerts, random), Shuffled(findings, random));

        Assert.Equal(Sorted(straight), Sorted(shuffled));
    }

    [Property]
    [Shows(62)]
    public void Findings_Replayed_ChangeNothing(int seed)
    {
        var random = new System.Random(seed);
        var findings = SomeFindings(random);
        var once = Apply(SomeAlerts(random), findings);

        Assert.Empty(Reconciliation.Decide(once, findings));
    }

    [Property]
    public void Alerts_AfterEveryStep_AreOpenExactlyForFindingsNobodySettled(int seed)
    {
        var random = new System.Random(seed);
        var before = SomeAlerts(random);
        var findings = SomeFindings(random);

        var after = Apply(before, findings).ToDictionary(alert => alert.Fingerprint);

        Assert.All(findings, finding => Assert.True(after[finding.Fingerprint].State is AlertStates.Open or AlertStates.Settled));
        Assert.All(after.Values.Where(alert => alert.State == AlertStates.Open), alert => Assert.Contains(findings, finding => finding.Fingerprint == alert.Fingerprint));
        Assert.All(before, alert => Assert.InRange(after[alert.Fingerprint].TimesRaised, alert.TimesRaised, alert.TimesRaised + 1));
    }

    private static IEnumerable<AlertChangeKind> Kinds(IReadOnlyCollection<Alert> alerts, IReadOnlyCollection<Finding> findings) =>
        Reconciliation.Decide(alerts, findings).Select(change => change.Kind);

    private static Finding Find(string window, FindingLevel level = FindingLevel.Hold, string facts = "1") => new()
    {
        RuleName = "rule",
        Level = level,
        Scope = "sample:S",
        Subject = "S",
        Window = window,
        Headline = "found " + facts,
        Advice = "look",
        Facts = new FactSheet().Add("value", facts),
    };

    private static Alert Alert(string window, string state = AlertStates.Open) => Raised(null, Find(window)) with { State = state };

    private static Alert Raised(Alert? before, Finding finding) => (before ?? new Alert()) with
    {
        Fingerprint = finding.Fingerprint,
        RuleName = finding.RuleName,
        Level = FindingLevels.TextOf(finding.Level),
        Scope = finding.Scope,
        Headline = finding.Headline,
        Advice = finding.Advice,
        Facts = finding.Facts.ToJson(),
        State = AlertStates.Open,
        TimesRaised = (before?.TimesRaised ?? 0) + 1,
    };

    private static List<Alert> Apply(IReadOnlyCollection<Alert> alerts, IReadOnlyCollection<Finding> findings)
    {
        var state = alerts.ToDictionary(alert => alert.Fingerprint);
        foreach (var change in Reconciliation.Decide(alerts, findings))
        {
            var fingerprint = change.Existing?.Fingerprint ?? change.Finding!.Fingerprint;
            state[fingerprint] = change.Kind switch
            {
                AlertChangeKind.Clear => change.Existing! with { State = AlertStates.Cleared },
                AlertChangeKind.Update => Raised(change.Existing, change.Finding!) with { TimesRaised = change.Existing!.TimesRaised },
                _ => Raised(change.Existing, change.Finding!),
            };
        }

        return [.. state.Values];
    }

    private static List<Alert> SomeAlerts(System.Random random)
    {
        string[] states = [AlertStates.Open, AlertStates.Cleared, AlertStates.Settled];
        return [.. Windows(random).Select(window => Raised(null, SomeFinding(window, random)) with { State = states[random.Next(3)], TimesRaised = random.Next(1, 4) })];
    }

    private static List<Finding> SomeFindings(System.Random random) => [.. Windows(random).Select(window => SomeFinding(window, random))];

    private static Finding SomeFinding(string window, System.Random random) => Find(window, (FindingLevel)random.Next(1, 4), $"{random.Next(3)}");

    private static List<string> Windows(System.Random random) => [.. Enumerable.Range(0, 8).Where(_ => random.Next(2) == 0).Select(number => $"window {number}")];

    private static List<T> Shuffled<T>(IEnumerable<T> items, System.Random random) => [.. items.OrderBy(_ => random.Next())];

    private static IEnumerable<Alert> Sorted(IEnumerable<Alert> alerts) => alerts.OrderBy(alert => alert.Fingerprint, StringComparer.Ordinal);
}
