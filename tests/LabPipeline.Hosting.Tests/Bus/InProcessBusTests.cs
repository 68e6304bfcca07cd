namespace LabPipeline.Hosting.Tests.Bus;

public sealed class InProcessBusTests : BusBehaviour
{
    private protected override Task<BusLab> StartAsync() => BusLab.StartAsync(new Dictionary<string, string?>());
}
