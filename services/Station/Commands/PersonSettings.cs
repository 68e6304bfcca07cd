using System.ComponentModel;
using LabPipeline.Board.People;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>A person of the board by name, with a password that is typed or read from a file, never given on the command line.</summary>
internal class PersonSettings : StationSettings
{
    [CommandArgument(0, "<NAME>")]
    [Description("The name to sign in with.")]
    public string Name { get; init; } = "";

    [CommandOption("--password-file <FILE>")]
    [Description("File whose first line is the password; without it the password is asked for.")]
    public string? PasswordFile { get; init; }

    [CommandOption("--by <NAME>")]
    [Description("Your name, for the change log.")]
    [DefaultValue("command line")]
    public string By { get; init; } = "command line";

    /// <exception cref="StationException">There is no such file, or two typed passwords differ.</exception>
    public string ReadPassword(IAnsiConsole console)
    {
        if (PasswordFile is { } path)
        {
            return File.Exists(path)
                ? File.ReadLines(path).FirstOrDefault() ?? ""
                : throw new StationException(ExitCode.NotFound, $"No file {path}; expected a file whose first line is the password.");
        }

        var password = Ask(console, $"Password for {Name}, at least {PersonRules.ShortestPassword} characters:");
        return password == Ask(console, "Once more:")
            ? password
            : throw new StationException(ExitCode.Faults, "The two passwords differ; nothing was changed.");
    }

    private static string Ask(IAnsiConsole console, string question) => console.Prompt(new TextPrompt<string>(question).Secret(null));
}
