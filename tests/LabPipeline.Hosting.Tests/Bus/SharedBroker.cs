namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>Tests that share the broker run one after the other: some of them stop it.</summary>
[CollectionDefinition(Name)]
public sealed class SharedBroker : ICollectionFixture<RabbitFixture>
{
    public const string Name = "broker";
}
