using LabPipeline.Science.Randomisation;

namespace LabPipeline.Science.Tests.Randomisation;

/// <summary>FNV-1a 64 against values published with the algorithm (draft-eastlake-fnv, test vectors; from memory).</summary>
public sealed class Fnv1aTests
{
    [Theory]
    [InlineData("", 0xcbf29ce484222325)]
    [InlineData("a", 0xaf63dc4c8601ec8c)]
    [InlineData("foobar", 0x85944171f73967e8)]
    public void Of_OnPublishedTexts_GivesThePublishedHashes(string text, ulong hash) => Assert.Equal(hash, Fnv1a.Of(text));
}
