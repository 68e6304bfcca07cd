namespace LabPipeline.Quality.Rules;

/// <summary>A planned sample of a pull and the readings in effect it has.</summary>
public sealed record PullSample
{
    public required string Barcode { get; init; }

    public required string PlotCode { get; init; }

    public string Block { get; init; } = "";

    public required string BayCode { get; init; }

    /// <summary>Readings in effect by quantity; quantities without any are not listed.</summary>
    public required IReadOnlyDictionary<int, int> Readings { get; init; }

    /// <summary>Earliest instant of measurement, when the files state one.</summary>
    public DateTimeOffset? FirstMeasuredAt { get; init; }

    /// <summary>Earliest instant of measurement of each quantity, where the files state one.</summary>
    public IReadOnlyDictionary<int, DateTimeOffset> FirstOfQuantity { get; init; } = new Dictionary<int, DateTimeOffset>();

    /// <summary>By quantity, why readings of it were set aside.</summary>
    public IReadOnlyDictionary<int, string> SetAside { get; init; } = new Dictionary<int, string>();

    public bool HasNothing => Readings.Count == 0;

    public int CountOf(int quantityId) => Readings.GetValueOrDefault(quantityId);
}
