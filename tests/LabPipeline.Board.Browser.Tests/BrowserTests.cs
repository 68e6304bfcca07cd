namespace LabPipeline.Board.Browser.Tests;

/// <summary>One board and one browser for every test; each test opens its own pages.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<DemoBoard>
{
    public const string Name = "browser";
}
