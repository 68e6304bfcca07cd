using Microsoft.Extensions.Options;

namespace LabPipeline.Intake;

/// <summary>Lists everything wrong with the intake settings at once.</summary>
public sealed class IntakeOptionsValidator : IValidateOptions<IntakeOptions>
{
    // A statement asks for all of them, and SQL Server takes 2,100 parameters.
    private const int MostFiles = 1000;

    private static readonly TimeSpan ShortestInterval = TimeSpan.FromMilliseconds(100);

    public ValidateOptionsResult Validate(string? name, IntakeOptions options)
    {
        var faults = new List<string>();
        if (options.ScanInterval < ShortestInterval)
        {
            faults.Add($"Intake:ScanInterval is {options.ScanInterval}; expected at least {ShortestInterval}.");
        }

        if (options.FilesPerCommit is < 1 or > MostFiles)
        {
            faults.Add($"Intake:FilesPerCommit is {options.FilesPerCommit}; expected 1 to {MostFiles}.");
        }

        if (options.BytesPerCommit < 1)
        {
            faults.Add($"Intake:BytesPerCommit is {options.BytesPerCommit}; expected at least 1.");
        }

        return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
    }
}
