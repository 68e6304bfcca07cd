using Microsoft.Extensions.Options;

namespace LabPipeline.Quality.Rules;

/// <summary>Says everything that is wrong with the limits at once.</summary>
public sealed class RuleLimitsValidator : IValidateOptions<RuleLimits>
{
    public ValidateOptionsResult Validate(string? name, RuleLimits options)
    {
        var faults = new List<string>();
        Check(options.SessionShift > 0m, nameof(options.SessionShift), options.SessionShift, "above 0", faults);
        Check(options.SessionErrors > 0m, nameof(options.SessionErrors), options.SessionErrors, "above 0", faults);
        Check(options.SessionSamples >= 3, nameof(options.SessionSamples), options.SessionSamples, "3 or more", faults);
        Check(options.PeelTargetPercent is >= 0m and <= 100m, nameof(options.PeelTargetPercent), options.PeelTargetPercent, "from 0 to 100", faults);
        Check(options.PullGraceDays is >= 0 and <= 60, nameof(options.PullGraceDays), options.PullGraceDays, "from 0 to 60", faults);
        Check(options.HeldFileMinutes is >= 0 and <= 10080, nameof(options.HeldFileMinutes), options.HeldFileMinutes, "from 0 to 10080", faults);
        return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
    }

    private static void Check(bool good, string limit, decimal found, string expected, List<string> faults)
    {
        if (!good)
        {
            faults.Add(NumberText.Invariant($"{RuleLimits.Section}:{limit} is {found}; expected {expected}."));
        }
    }
}
