using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>Collects what is computed for one sample.</summary>
internal sealed class ResultSheet
{
    /// <summary>Decimals kept, those of the warehouse.</summary>
    private const int Decimals = UnitConversion.StoredDecimals;

    public List<SampleResult> Results { get; } = [];

    public List<ResultFault> Faults { get; } = [];

    public List<ExtractAgreement> Agreements { get; } = [];

    public void Add(Quantity quantity, decimal value, int n, decimal? s, string basis, IEnumerable<long> readings, bool belowLimit = false) =>
        Results.Add(new SampleResult(quantity, Rounded(value), belowLimit, n, s is { } spread ? Rounded(spread) : null, basis, [.. readings.Distinct().Order()]));

    public void Unusable(Quantity quantity, string where, string found, string advice) =>
        Faults.Add(new ResultFault(quantity, where, found, advice, IsUnusable: true));

    public void Unknown(Quantity quantity, string where, string found, string advice) =>
        Faults.Add(new ResultFault(quantity, where, found, advice, IsUnusable: false));

    public SampleResult? Find(Quantity quantity) => Results.Find(result => result.Quantity == quantity);

    private static decimal Rounded(decimal value) => decimal.Round(value, Decimals, MidpointRounding.ToEven);
}
