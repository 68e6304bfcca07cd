using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station;

/// <summary>For commands that change something: who does it and why goes into the change log.</summary>
public class SignedSettings : StationSettings
{
    [CommandOption("--by <NAME>")]
    [Description("Your name, for the change log.")]
    public string By { get; init; } = "";

    [CommandOption("--why <REASON>")]
    [Description("The reason, in a few words.")]
    public string Why { get; init; } = "";

    public override ValidationResult Validate() =>
        string.IsNullOrWhiteSpace(By) ? ValidationResult.Error("--by is missing: who does this?")
        : string.IsNullOrWhiteSpace(Why) ? ValidationResult.Error("--why is missing: for what reason?")
        : ValidationResult.Success();
}
