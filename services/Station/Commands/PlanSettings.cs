using System.ComponentModel;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Settings of the commands that read a plan document.</summary>
internal sealed class PlanSettings : StationSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("The plan document (JSON).")]
    public string File { get; init; } = "";

    [CommandOption("--by <NAME>")]
    [Description("Your name, for the change log.")]
    public string By { get; init; } = Environment.UserName;

    [CommandOption("--out <FILE>")]
    [Description("Where to write; the console when left out.")]
    public string? Out { get; init; }
}
