using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Tests.Facts;

public class PassingTextTests
{
    [Fact]
    public void Kept_WhenTheBufferIsUsedAgain_StaysAsItWas()
    {
        var buffer = "0.052".ToCharArray();
        var passing = new PassingText(buffer);
        var kept = passing.Kept();

        "9.999".CopyTo(buffer);

        Assert.Equal(("0.052", "9.999"), (kept.Text, passing.Text));
        Assert.True(kept == "0.052" && kept != passing);
        Assert.Equal(kept.GetHashCode(), ((PassingText)"0.052").GetHashCode());
    }

    [Fact]
    public void Text_WhenThereIsNone_IsNullAndNotTheEmptyOne()
    {
        PassingText none = null;

        Assert.Equal((false, null, ""), (none.Exists, none.Text, none.ToString()));
        Assert.NotEqual(none, (PassingText)"");
        Assert.Equal("", ((PassingText)"").Text);
        Assert.Equal(none, none.Kept());
    }

    [Fact]
    public void Shelf_WhenItMustGrow_KeepsWhatItHolds_AndBeginsAgainWhenCleared()
    {
        var shelf = new TextShelf(4);
        var texts = new[] { "a", "", "bcd", "efghijklmnop", "q" };

        var kept = texts.Select(text => shelf.Keep(text)).ToList();

        Assert.Equal(texts, kept.Select(text => text.Text));
        Assert.False(shelf.Keep(default(PassingText)).Exists);
        shelf.Clear();
        Assert.Equal("again", shelf.Keep("again").Text);
    }
}
