using System.Data.Common;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Hosting;

/// <summary>The end of a lease whose holder stops. Where it cannot be written any more, the lease ends by itself a little later.</summary>
public static class LeaseEnd
{
    public static async Task GiveBackAsync(LabWarehouse warehouse, string lease, string holder, ILogger log)
    {
        try
        {
            await warehouse.WriteAsync(session => LeaseStore.GiveBackAsync(session, lease, holder), CancellationToken.None).ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is OperationCanceledException or DbException)
        {
            log.LogWarning(exception, "LeaseNotGivenBack {Lease}", lease);
        }
    }
}
