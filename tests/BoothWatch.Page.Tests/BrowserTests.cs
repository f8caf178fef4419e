namespace BoothWatch.Page.Tests;

/// <summary>Shares one browser; tests of the collection run one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<Browser>
{
    public const string Name = "browser";
}
