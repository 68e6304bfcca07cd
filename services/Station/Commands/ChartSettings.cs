using System.ComponentModel;
using System.Globalization;
using LabPipeline.Science.Quantities;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>A control chart by its names, with who and why.</summary>
internal class ChartSettings : SignedSettings
{
    [CommandArgument(0, "<INSTRUMENT>")]
    [Description("The instrument, as 'station controls list' shows it.")]
    public string Instrument { get; init; } = "";

    [CommandArgument(1, "<MATERIAL>")]
    [Description("The control material.")]
    public string Material { get; init; } = "";

    [CommandArgument(2, "<QUANTITY>")]
    [Description("The quantity, such as glucose_in_extract.")]
    public string Quantity { get; init; } = "";

    [CommandOption("--from <DATE>")]
    [Description("First day (UTC) on which it decides; from now on when left out.")]
    public string? From { get; init; }

    public Quantity Known => QuantityCatalogue.Find(Quantity)
        ?? throw new StationException(ExitCode.NotFound, $"There is no quantity '{Quantity}'; 'station controls list' shows those that have a chart.");

    public DateTimeOffset InForceFrom(DateTimeOffset now) => FromDate(From, now);

    /// <summary>Reads a day as the instant it begins in UTC.</summary>
    internal static DateTimeOffset FromDate(string? text, DateTimeOffset now)
    {
        if (text is null)
        {
            return now;
        }

        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? new DateTimeOffset(day.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero)
            : throw new StationException(ExitCode.Failed, $"--from is '{text}'; expected a day such as 2026-01-14.");
    }
}
