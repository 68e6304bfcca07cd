using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>A kind of instrument that sent nothing of a bench day although the plan expects it of the samples measured that day.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Day">The local bench day.</param>
/// <param name="Samples">The samples of that day.</param>
internal sealed record SilentKind(QuantityKind Kind, DateOnly Day, IReadOnlyList<PullSample> Samples)
{
    public static IReadOnlyList<SilentKind> FindAll(PullEvidence evidence)
    {
        var kinds = evidence.Expected.ToLookup(expectation => expectation.Quantity.Kind, expectation => expectation.Quantity.Id);
        return
        [
            .. from day in evidence.Samples.Where(sample => sample.FirstMeasuredAt is not null).GroupBy(sample => evidence.BenchDayOf(sample)!.Value)
               where day.Count() >= RuleDefaults.SilentSamples && evidence.Today > day.Key.AddDays(RuleDefaults.SilentGraceDays)
               orderby day.Key
               from kind in kinds
               orderby kind.Key
               where kind.All(quantityId => day.All(sample => sample.CountOf(quantityId) == 0))
               select new SilentKind(kind.Key, day.Key, [.. day]),
        ];
    }

    public string Name => Kind switch
    {
        QuantityKind.Sugar => "sugar analyser",
        QuantityKind.Balance => "balance",
        QuantityKind.Colour => "colour meter",
        _ => "bench sheet",
    };
}
