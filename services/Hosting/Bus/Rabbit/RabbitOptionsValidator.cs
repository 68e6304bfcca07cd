using System.Globalization;
using LabPipeline.Hosting.Settings;
using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>Says everything that is wrong with the broker's settings at once. They matter only where the broker is used.</summary>
public sealed class RabbitOptionsValidator(IOptions<LabOptions> lab) : IValidateOptions<RabbitOptions>
{
    private const int HighestPort = 65535;

    public ValidateOptionsResult Validate(string? name, RabbitOptions options)
    {
        var faults = lab.Value.Bus == BusNames.RabbitMq ? Faults(options).Select(fault => $"{RabbitOptions.Section}:{fault}").ToList() : [];
        return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
    }

    private static IEnumerable<string> Faults(RabbitOptions options)
    {
        if (string.IsNullOrWhiteSpace(options.Host) || options.Host.Contains('/', StringComparison.Ordinal))
        {
            yield return $"Host is '{options.Host}'; expected the broker's name or address alone, such as broker.lab.example.";
        }

        if (options.Port is < 0 or > HighestPort)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"Port is {options.Port}; expected 1 to {HighestPort}, or 0 for the usual one.");
        }

        if (options.VirtualHost.Length == 0)
        {
            yield return "VirtualHost is empty; expected / or the name of a virtual host of the broker.";
        }

        if (string.IsNullOrWhiteSpace(options.User))
        {
            yield return "User is empty; expected the broker's user for this laboratory.";
        }

        if (SecretSource.Read(options.PasswordFile, options.PasswordVariable, out var fault) is null)
        {
            yield return $"PasswordFile, PasswordVariable: {fault}";
        }

        if (options.TlsServerName.Length > 0 && !options.Tls)
        {
            yield return $"TlsServerName is '{options.TlsServerName}' although Tls is off; expected Tls on, or no name.";
        }
    }
}
