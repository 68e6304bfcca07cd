using LabPipeline.Hosting.Bus;
using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting;

/// <summary>Says everything that is wrong with the settings at once, each with what was found and what is expected.</summary>
public sealed class LabOptionsValidator : IValidateOptions<LabOptions>
{
    public ValidateOptionsResult Validate(string? name, LabOptions options)
    {
        var faults = new List<string>();
        if (string.IsNullOrWhiteSpace(options.DataFolder))
        {
            faults.Add("Lab:DataFolder is empty; expected the folder that holds the warehouse and the archive.");
        }

        if (options.Bus is not (BusNames.InProcess or BusNames.RabbitMq))
        {
            faults.Add($"Lab:Bus is '{options.Bus}'; expected {BusNames.InProcess} or {BusNames.RabbitMq}.");
        }

        return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
    }
}
