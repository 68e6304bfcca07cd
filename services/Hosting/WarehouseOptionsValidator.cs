using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting;

/// <summary>Says everything that is wrong with the choice of the database and the way to it, before anything starts.</summary>
public sealed class WarehouseOptionsValidator : IValidateOptions<WarehouseOptions>
{
    public ValidateOptionsResult Validate(string? name, WarehouseOptions options)
    {
        if (options.UsesSqlite)
        {
            return ValidateOptionsResult.Success;
        }

        if (!options.UsesSqlServer)
        {
            return ValidateOptionsResult.Fail($"Lab:Warehouse is '{options.Warehouse}'; expected sqlite or sqlserver.");
        }

        SqlServerConnection.Read(options.SqlServer, out var faults);
        return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
    }
}
