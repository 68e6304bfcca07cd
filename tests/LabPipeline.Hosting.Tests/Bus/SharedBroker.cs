namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>Classes short enough to share a broker.</summary>
[CollectionDefinition(Name)]
public sealed class SharedBroker : ICollectionFixture<RabbitFixture>
{
    public const string Name = "broker";
}
