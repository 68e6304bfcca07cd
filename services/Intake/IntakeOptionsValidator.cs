using Microsoft.Extensions.Options;

namespace LabPipeline.Intake;

/// <summary>Lists everything wrong with the intake settings at once.</summary>
public sealed class IntakeOptionsValidator : IValidateOptions<IntakeOptions>
{
    private static readonly TimeSpan ShortestInterval = TimeSpan.FromMilliseconds(100);

    public ValidateOptionsResult Validate(string? name, IntakeOptions options)
    {
        var faults = new List<string>();
        if (options.ScanInterval < ShortestInterval)
        {
            faults.Add($"Intake:ScanInterval is {options.ScanInterval}; expected at least {ShortestInterval}.");
        }

        if (options.FilesPerCommit < 1)
        {
            faults.Add($"Intake:FilesPerCommit is {options.FilesPerCommit}; expected at least 1.");
        }

        if (options.BytesPerCommit < 1)
        {
            faults.Add($"Intake:BytesPerCommit is {options.BytesPerCommit}; expected at least 1.");
        }

        return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
    }
}
