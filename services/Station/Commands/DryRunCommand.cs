using System.ComponentModel;
using System.Globalization;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using Spectre.Console;
using Spectre.Console.Cli;
using Profile = LabPipeline.Intake.Profiles.Profile;

namespace LabPipeline.Station.Commands;

/// <summary>Shows how a profile reads a file, storing nothing.</summary>
internal sealed class DryRunCommand(IAnsiConsole console) : Command<DryRunCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var profile = ReadProfile(settings.Profile);
        using var bytes = OpenFile(settings.File);
        var name = Path.GetFileName(settings.File);
        var trial = DryRun.Read(profile, bytes, name, settings.Rows, ReadLimits.Default, cancellationToken);
        Show(trial.Readings);
        var outcome = trial.Outcome;
        if (outcome.State != ReadState.Complete)
        {
            throw new StationException(
                ExitCode.Faults,
                string.Join(Environment.NewLine, outcome.Faults.Select(fault => fault.Describe(name)).Append($"{outcome.FaultCount} faults; the file would be refused.")));
        }

        console.MarkupLineInterpolated(
            $"{outcome.Rows} rows give {outcome.Readings} readings, {outcome.ControlReadings} control checks and {outcome.FryBatchReadings} fry batch values; {outcome.ParkedRowCount} rows would be parked.");
        return ExitCode.Done;
    }

    private void Show(IReadOnlyList<ParsedReading> readings)
    {
        var table = new Table().AddColumns("line", "sample", "quantity", "value", "unit", "as written", "extract", "replicate", "tuber", "slice", "run", "measured (UTC)");
        foreach (var reading in readings)
        {
            table.AddRow(new[]
            {
                Text(reading.Line),
                reading.Barcode ?? reading.Material ?? "",
                reading.Quantity.Name,
                (reading.BelowLimit ? "below " : "") + reading.Value.ToString(CultureInfo.InvariantCulture),
                UnitText.Of(reading.Quantity.Unit.Symbol),
                UnitText.With(reading.RawValue.ToString(), reading.RawUnit),
                reading.Extract ?? "",
                Text(reading.Replicate),
                Text(reading.Tuber),
                Text(reading.Slice),
                reading.Run,
                reading.MeasuredAt?.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture) ?? "",
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
    }

    private static string Text(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static Profile ReadProfile(string path)
    {
        if (!File.Exists(path))
        {
            throw new StationException(ExitCode.NotFound, $"No profile {path}; docs/specs/intake-profile.md shows how one is written.");
        }

        var name = Path.GetFileName(path);
        var result = ProfileDocument.Parse(File.ReadAllText(path), name);
        return result.Profile ?? throw new StationException(
            ExitCode.Faults, string.Join(Environment.NewLine, result.Faults.Select(fault => fault.Describe(name))));
    }

    private static FileStream OpenFile(string path) => File.Exists(path)
        ? File.OpenRead(path)
        : throw new StationException(ExitCode.NotFound, $"No file {path}.");

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("The profile (JSON).")]
        public string Profile { get; init; } = "";

        [CommandArgument(1, "<FILE>")]
        [Description("A file of that instrument.")]
        public string File { get; init; } = "";

        [CommandOption("--rows <COUNT>")]
        [Description("How many values to show.")]
        [DefaultValue(20)]
        public int Rows { get; init; } = 20;
    }
}
