using System.Globalization;
using LabPipeline.Quality.Results;

namespace LabPipeline.Quality.Rules;

/// <summary>How rules put a comparison of extracts into words.</summary>
internal static class AgreementText
{
    /// <summary>"duplicate glucose 0.182 and 0.231 mg/g".</summary>
    public static string Results(ExtractAgreement agreement)
    {
        var compared = agreement.Extracts.Take(agreement.Compared).Select(Value).ToList();
        var values = compared.Count == 2 ? string.Join(" and ", compared) : string.Join(", ", compared);
        return $"{(compared.Count == 2 ? "duplicate" : NumberText.Of(compared.Count) + " results of")} {agreement.Quantity.Name} {values} {agreement.Quantity.Unit}";
    }

    /// <summary>"limit r = 0.018 (provisional s_r 0.0064)".</summary>
    public static string Limit(ExtractAgreement agreement)
    {
        var name = agreement.Compared == 2 ? "r" : NumberText.Invariant($"CR({agreement.Compared})");
        var kind = agreement.Repeatability.IsProvisional ? "provisional " : "";
        return $"limit {name} = {NumberText.Of(agreement.CriticalRange)} ({kind}s_r {NumberText.Of(agreement.RepeatabilitySd)})";
    }

    public static FactSheet AddTo(FactSheet facts, ExtractAgreement agreement)
    {
        var name = agreement.Quantity.Name;
        foreach (var extract in agreement.Extracts)
        {
            facts.Add(extract.Extract.Length == 0 ? name : $"{name}, extract {extract.Extract}", NumberText.With(Exact(extract), agreement.Quantity.Unit));
        }

        return facts.Add(name + " range", agreement.Range)
            .Add(name + " limit", agreement.CriticalRange)
            .Add(name + " s_r", agreement.RepeatabilitySd)
            .Add(name + " s_r source", agreement.Repeatability.Source + (agreement.Repeatability.IsProvisional ? " (provisional)" : ""));
    }

    private static string Value(ExtractResult extract) => extract.Content.Raw is { } raw ? NumberText.Of(raw) : extract.Content.Kind switch
    {
        Science.Units.ResultKind.BelowLimit => "<" + NumberText.Of(extract.Content.Limit!.Value),
        _ => $"{NumberText.Of(extract.Content.Low)} to {NumberText.Of(extract.Content.High)}",
    };

    // With every digit the warehouse keeps: a difference in the last one is a difference in the evidence.
    private static string Exact(ExtractResult extract) => extract.Content.Raw is { } raw
        ? raw.ToString("0.############", CultureInfo.InvariantCulture)
        : Value(extract);
}
