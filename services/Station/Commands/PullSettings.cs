using System.ComponentModel;
using LabPipeline.Reporting.Bench;
using LabPipeline.Reporting.Printing;
using LabPipeline.Warehouse;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Settings of the commands that print papers for a pull.</summary>
internal class PullSettings : StationSettings
{
    [CommandArgument(0, "<TRIAL>")]
    [Description("Code of the trial.")]
    public string Trial { get; init; } = "";

    [CommandOption("--pull <NUMBER>")]
    [Description("The pull.")]
    public int Pull { get; init; }

    [CommandOption("--out <NAME>")]
    [Description("Where to write, without an ending: a .pdf and a .csv file are made. The CSV goes to the console when left out.")]
    public string? Out { get; init; }

    [CommandOption("--fonts <FOLDER>")]
    [Description("Folder with fonts, when the computer has none.")]
    public string? Fonts { get; init; }

    public override ValidationResult Validate() => Pull == 0 ? ValidationResult.Error("--pull is missing: which pull?") : ValidationResult.Success();

    /// <exception cref="StationException">The warehouse holds no such pull.</exception>
    public async Task<BenchPull> FindAsync(LabWarehouse warehouse, CancellationToken cancellationToken)
    {
        var trial = Trial.Trim();
        return await warehouse.ReadAsync(session => BenchPullStore.FindAsync(session, trial, Pull), cancellationToken)
            ?? throw new StationException(ExitCode.NotFound, $"Trial '{trial}' with pull {Pull} is not in the warehouse; check both, or load the trial's plan.");
    }

    /// <summary>Writes both files, or the table alone to the console.</summary>
    public async Task WriteAsync(IAnsiConsole console, string csv, Func<byte[]> pdf, CancellationToken cancellationToken)
    {
        if (Out is not { } start)
        {
            console.Profile.Out.Writer.Write(csv);
            return;
        }

        PrintFonts.Use(Fonts);
        await WholeFile.WriteAsync(start + ".pdf", pdf(), cancellationToken);
        await WholeFile.WriteAsync(start + ".csv", csv, cancellationToken);
        console.MarkupLineInterpolated($"Written to [bold]{start}.pdf[/] and [bold]{start}.csv[/].");
    }
}
