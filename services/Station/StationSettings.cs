using System.ComponentModel;
using LabPipeline.Hosting;
using Spectre.Console.Cli;

namespace LabPipeline.Station;

/// <summary>What every command takes.</summary>
public class StationSettings : CommandSettings
{
    [CommandOption("--data <FOLDER>")]
    [Description("Folder with the warehouse, the archive and the drop folders.")]
    [DefaultValue("lab-data")]
    public string Data { get; init; } = "lab-data";

    /// <summary>The paths inside the data folder.</summary>
    public LabOptions Lab => new() { DataFolder = Data };
}
