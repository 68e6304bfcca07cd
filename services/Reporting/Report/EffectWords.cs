namespace LabPipeline.Reporting.Report;

/// <summary>An effect in words: one factor, several together, and how they change with time in storage.</summary>
internal sealed class EffectWords
{
    private readonly string _subject;
    private readonly bool _overTime;
    private readonly bool _isTogether;

    public EffectWords(string term)
    {
        string[] factors = [.. term.Split(':').Where(name => name != "pull")];
        _subject = string.Join(" and ", factors);
        _subject = char.ToUpperInvariant(_subject[0]) + _subject[1..];
        _isTogether = factors.Length > 1;
        _overTime = factors.Length < term.Split(':').Length;
    }

    public bool IsMainEffect => !_isTogether && !_overTime;

    public string Shown(string responses) => (_isTogether, _overTime) switch
    {
        (false, false) => $"{_subject}: means differed in {responses}.",
        (false, true) => $"{_subject}: the course over time in storage differed between levels in {responses}.",
        (true, false) => $"{_subject}: what one did depended on the level of the other in {responses}.",
        _ => $"{_subject}: how the effect of one depended on the other changed with time in storage in {responses}.",
    };

    public string NotShown(string responses, string widest) => (_isTogether, _overTime) switch
    {
        (false, false) => $"{_subject}: no difference in {responses} was shown{widest}.",
        (false, true) => $"{_subject}: no difference in the course over time in storage was shown for {responses}.",
        (true, false) => $"{_subject}: that the effect of one depends on the other was not shown for {responses}.",
        _ => $"{_subject}: that the effect of one depends on the other, more at one time than at another, was not shown for {responses}.",
    };
}
