using System.Globalization;
using LabPipeline.Board.Controls;
using LabPipeline.Board.Layout;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Controls;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Board.Office;

/// <summary>Decides about limits: what is asked for is checked, kept as the next version, and the samples it concerns are judged anew.</summary>
/// <remarks>Each answer is a word of <see cref="Said"/>; nothing is changed unless it is <see cref="Said.LimitSet"/>.</remarks>
internal sealed class LimitDesk(LabWarehouse warehouse, TimeProvider time)
{
    /// <summary>Names are looked for exactly as the pages show them; longer ones cannot be stored.</summary>
    private const int LongestName = 200;

    public Task<string> SetThresholdAsync(string trial, string quantity, string kind, string? value, LimitDecision decision, CancellationToken cancellationToken)
    {
        if (decision.Fault(time.GetUtcNow(), out var from) is { } fault)
        {
            return Task.FromResult(fault);
        }

        if (QuantityCatalogue.Find(quantity) is not { } known || !ThresholdKinds.All.Contains(kind) || !ThresholdScope.IsOfTrial(known) || !ThresholdScope.Knows(known, kind))
        {
            return Task.FromResult(Said.LimitNotKnown);
        }

        // An empty value goes back to the default.
        decimal? number = null;
        if (!string.IsNullOrWhiteSpace(value))
        {
            if (NumberOf(value) is not { } read)
            {
                return Task.FromResult(Said.NotANumber);
            }

            number = read;
        }

        var row = new ThresholdRow
        {
            TrialCode = trial,
            QuantityId = known.Id,
            Kind = kind,
            Value = number,
            InForceFrom = from,
            SetAt = time.GetUtcNow(),
            SetBy = decision.Who,
            Why = decision.Why!.Trim(),
        };
        return warehouse.WriteAsync(session => SetAsync(session, row), cancellationToken);
    }

    public Task<string> StateTargetAsync(ControlChartName chart, string? target, string? tolerance, LimitDecision decision, CancellationToken cancellationToken)
    {
        if (decision.Fault(time.GetUtcNow(), out var from) is { } fault)
        {
            return Task.FromResult(fault);
        }

        if (string.IsNullOrWhiteSpace(chart.Instrument) || string.IsNullOrWhiteSpace(chart.Material)
            || chart.Instrument.Length > LongestName || chart.Material.Length > LongestName || !ControlReview.IsCharted(chart.Quantity))
        {
            return Task.FromResult(Said.LimitNotKnown);
        }

        if (NumberOf(target) is not { } centre || NumberOf(tolerance) is not { } width || width <= 0m)
        {
            return Task.FromResult(Said.NotANumber);
        }

        return KeepAsync(Row(chart, decision, from) with { Kind = ControlLimitKinds.Target, Centre = centre, Lower = centre - width, Upper = centre + width }, cancellationToken);
    }

    /// <summary>Computes limits from the runs in the warehouse, as 'station controls freeze' does.</summary>
    /// <param name="chart">The chart, as <see cref="ControlChart.KeyOf"/> names it.</param>
    /// <param name="decision">Who decides, why and from when.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public Task<string> FreezeAsync(string chart, LimitDecision decision, CancellationToken cancellationToken) =>
        decision.Fault(time.GetUtcNow(), out var from) is { } fault
            ? Task.FromResult(fault)
            : warehouse.WriteAsync(session => FreezeAsync(session, chart, decision, from), cancellationToken);

    private async Task<string> FreezeAsync(WarehouseSession session, string chart, LimitDecision decision, DateTimeOffset from)
    {
        if ((await ControlChartStore.ListNamesAsync(session)).FirstOrDefault(name => ControlChart.KeyOf(name) == chart) is not { } known)
        {
            return Said.LimitNotKnown;
        }

        var openings = await ControlChartStore.ListOpeningsAsync(session, known.Instrument, known.Material, known.QuantityId, DateTimeOffset.MinValue);
        if (openings.Count < RuleDefaults.ControlRuns)
        {
            return Said.TooFewRuns;
        }

        var decided = Row(known, decision, from);
        await ControlLimitStore.KeepAsync(session, FrozenLimits.From(openings) with
        {
            Instrument = decided.Instrument,
            InForceFrom = decided.InForceFrom,
            DecidedAt = decided.DecidedAt,
            DecidedBy = decided.DecidedBy,
            Why = decided.Why,
        });
        return Said.LimitSet;
    }

    private static async Task<string> SetAsync(WarehouseSession session, ThresholdRow row)
    {
        if (!await TrialNames.ExistsAsync(session, row.TrialCode))
        {
            return Said.LimitNotKnown;
        }

        var newest = (await ThresholdStore.ListAsync(session)).Where(other => other.TrialCode == row.TrialCode && other.QuantityId == row.QuantityId)
            .GroupBy(other => other.Kind)
            .ToDictionary(kind => kind.Key, kind => kind.MaxBy(other => other.Version)!.Value);
        newest[row.Kind] = row.Value;
        if (newest.GetValueOrDefault(ThresholdKinds.Low) > newest.GetValueOrDefault(ThresholdKinds.High))
        {
            return Said.LowAboveHigh;
        }

        await ThresholdStore.SetAsync(session, row);
        return Said.LimitSet;
    }

    private async Task<string> KeepAsync(ControlLimitRow row, CancellationToken cancellationToken)
    {
        await warehouse.WriteAsync(session => ControlLimitStore.KeepAsync(session, row), cancellationToken);
        return Said.LimitSet;
    }

    private ControlLimitRow Row(ControlChartName chart, LimitDecision decision, DateTimeOffset from) => new()
    {
        Instrument = chart.Instrument.Trim(),
        Material = chart.Material.Trim(),
        QuantityId = chart.QuantityId,
        InForceFrom = from,
        DecidedAt = time.GetUtcNow(),
        DecidedBy = decision.Who,
        Why = decision.Why!.Trim(),
    };

    private static decimal? NumberOf(string? text) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var value)
            ? value
            : null;
}
