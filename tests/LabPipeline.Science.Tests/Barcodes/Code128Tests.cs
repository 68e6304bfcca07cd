using LabPipeline.Science.Barcodes;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Barcodes;

/// <summary>ISO/IEC 15417 against H_code128_examples.csv and H_code128_symbols.csv (patterns made by an independent encoder).</summary>
public sealed class Code128Tests
{
    [Fact]
    public void Encode_OnTheExamples_GivesValuesCheckAndModules()
    {
        foreach (var row in ReferenceTable.Load("H_code128_examples.csv").Rows)
        {
            var mode = row.Text("encoder_mode");
            var symbol = mode == "CODE128" ? Code128.Encode(row.Text("text")) : Code128.Encode(row.Text("text"), (Code128Set)mode[^1]);

            Assert.Equal(row.Text("symbol_values_without_check"), string.Join(' ', symbol.Values));
            Assert.Equal(row.Count("sum"), symbol.WeightedSum);
            Assert.Equal(row.Count("check_mod_103"), symbol.Check);
            Assert.Equal(row.Text("module_pattern_from_jsbarcode"), symbol.Modules);
        }
    }

    [Fact]
    public void Modules_OnEverySymbol_AgreeWithTheTable()
    {
        var rows = ReferenceTable.Load("H_code128_symbols.csv").Rows;

        Assert.Equal(107, rows.Count);
        Assert.All(rows, row => Assert.Equal(row.Text("modules"), Code128Symbol.Modules(row.Count("value"))));
    }

    [Theory]
    [InlineData("AB1234567", "104 33 34 17 99 23 45 67")]
    [InlineData("12345AB", "105 12 34 100 21 33 34")]
    [InlineData("42", "105 42")]
    [InlineData("A\t1", "103 33 73 17")]
    public void Encode_WhenDigitsAndLettersMix_FollowsTheRulesForShortSymbols(string text, string values) =>
        // ISO/IEC 15417 annex on the use of start, code set and shift characters (from memory).
        Assert.Equal(values, string.Join(' ', Code128.Encode(text).Values));

    [Theory]
    [InlineData("12345", Code128Set.C)]
    [InlineData("AB", Code128Set.C)]
    [InlineData("a", Code128Set.A)]
    [InlineData("A\t", Code128Set.B)]
    [InlineData("é", Code128Set.B)]
    public void Encode_WhenTheSetHasNotTheCharacter_Throws(string text, Code128Set set) =>
        Assert.Contains("expected", Assert.Throws<ArgumentException>(() => Code128.Encode(text, set)).Message, StringComparison.Ordinal);

    [Fact]
    public void Encode_WhenControlAndLowerCaseMix_Throws() => Assert.Throws<ArgumentException>(() => Code128.Encode("a\t"));
}
