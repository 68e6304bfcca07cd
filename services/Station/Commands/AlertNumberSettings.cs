using System.ComponentModel;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>An alert by its number, with who and why.</summary>
internal sealed class AlertNumberSettings : SignedSettings
{
    [CommandArgument(0, "<NUMBER>")]
    [Description("The alert's number, as 'station alerts' shows it.")]
    public int Number { get; init; }
}
