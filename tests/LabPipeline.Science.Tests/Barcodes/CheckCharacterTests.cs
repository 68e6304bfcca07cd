using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Science.Barcodes;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Barcodes;

/// <summary>ISO/IEC 7064 systems against H_iso7064_examples.csv (published examples and invented ids) and H_check_error_detection.csv (computed rates).</summary>
public sealed class CheckCharacterTests
{
    private const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    [Fact]
    public void Compute_OnTheExamples_GivesTheCheckCharacters()
    {
        foreach (var row in ReferenceTable.Load("H_iso7064_examples.csv").Rows)
        {
            Assert.Equal(row.Text("check"), Compute(row.Text("system"), row.Text("payload")));
            Assert.True(Verify(row.Text("system"), row.Text("payload") + row.Text("check")), row.ToString());
        }
    }

    [Fact]
    public void Compute_WhenSystemIsMod37x2_MayGiveAnAsterisk()
    {
        // Worked by hand from the standard: "I" has 2 x 18 = 36 and 38 - 36 = 2; "J" has 38 mod 37 = 1 and 37 mod 37 = 0; "1" has 2 and 38 - 2 = 36.
        Assert.Equal('2', Mod37x2.Compute("I"));
        Assert.Equal('0', Mod37x2.Compute("J"));
        Assert.Equal('*', Mod37x2.Compute("1"));
        Assert.True(Mod37x2.Verify("1*"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("S26 P01")]
    [InlineData("s26p01")]
    [InlineData("ÅB12")]
    public void Compute_WhenPayloadIsOutsideTheAlphabet_SaysWhatItExpected(string payload)
    {
        Assert.Contains("expected", Assert.Throws<ArgumentException>(() => Mod37x36.Compute(payload)).Message, StringComparison.Ordinal);
        Assert.False(Mod37x36.Verify(payload));
        Assert.False(Mod97x10.Verify(payload));
        Assert.False(Mod37x2.Verify(payload));
        Assert.False(Mod11x2.Verify(payload));
    }

    [Property]
    public Property Verify_AfterAnySingleSubstitution_Fails() => Prop.ForAll(Payloads(), payload =>
    {
        var text = payload + Mod37x36.Compute(payload);
        var pure = payload + Mod37x2.Compute(payload);
        var digits = payload + Mod97x10.Compute(payload);
        return Mod37x36.Verify(text) && Mod97x10.Verify(digits)
            && Substitutions(text).All(wrong => !Mod37x36.Verify(wrong))
            && Substitutions(pure).All(wrong => !Mod37x2.Verify(wrong));
    });

    [Theory]
    [InlineData("adjacent_transpositions_tried", "transpositions_undetected", 1)]
    [InlineData("jump_transpositions_tried", "jumps_undetected", 2)]
    public void Verify_AfterASwap_MissesTheShareInTheTable(string tried, string undetected, int distance)
    {
        // Row MOD 37,36, payload of 10. Both shares are samples; four standard errors of their difference are allowed.
        const int Trials = 60_000;
        var row = ReferenceTable.Load("H_check_error_detection.csv").Rows[0];
        var expected = row.Number(undetected) / row.Number(tried);
        var random = new Random(20260114);

        var missed = Enumerable.Range(0, Trials).Count(_ => Mod37x36.Verify(Swapped(random, "MOD 37,36", Alphabet, distance)));

        var error = Math.Sqrt(expected * ((1 / row.Number(tried)) + (1.0 / Trials)));
        Assert.Equal(expected, (double)missed / Trials, 4 * error);
    }

    [Theory]
    [InlineData("MOD 97-10", "0123456789", 1)]
    [InlineData("MOD 97-10", "0123456789", 2)]
    [InlineData("MOD 37-2", Alphabet, 1)]
    [InlineData("MOD 37-2", Alphabet, 2)]
    public void Verify_AfterASwap_FindsEveryOne(string system, string alphabet, int distance)
    {
        // H_check_error_detection.csv: none undetected in either system.
        var random = new Random(7064);

        Assert.All(Enumerable.Range(0, 3000), _ => Assert.False(Verify(system, Swapped(random, system, alphabet, distance))));
    }

    private static Arbitrary<string> Payloads() =>
        Gen.Elements<char>(Alphabet.ToCharArray()).ArrayOf().Where(characters => characters.Length is > 0 and < 20).Select(characters => new string(characters)).ToArbitrary();

    private static IEnumerable<string> Substitutions(string text) =>
        from position in Enumerable.Range(0, text.Length)
        from character in Alphabet
        where text[position] != character
        select text[..position] + character + text[(position + 1)..];

    /// <summary>A checked random payload of ten with two different characters swapped, the check character among them now and then.</summary>
    private static string Swapped(Random random, string system, string alphabet, int distance)
    {
        while (true)
        {
            var text = string.Concat(Enumerable.Range(0, 10).Select(_ => alphabet[random.Next(alphabet.Length)]));
            text += Compute(system, text);
            var position = random.Next(11 - distance);
            var characters = text.ToCharArray();
            (characters[position], characters[position + distance]) = (characters[position + distance], characters[position]);
            if (characters[position] != characters[position + distance])
            {
                return new string(characters);
            }
        }
    }

    private static string Compute(string system, string payload) => system switch
    {
        "MOD 37,36" => Mod37x36.Compute(payload).ToString(),
        "MOD 97-10" => Mod97x10.Compute(payload),
        "MOD 11-2" => Mod11x2.Compute(payload).ToString(),
        "MOD 37-2" => Mod37x2.Compute(payload).ToString(),
        _ => throw new ArgumentException($"Unknown system '{system}'.", nameof(system)),
    };

    private static bool Verify(string system, string text) => system switch
    {
        "MOD 37,36" => Mod37x36.Verify(text),
        "MOD 97-10" => Mod97x10.Verify(text),
        "MOD 11-2" => Mod11x2.Verify(text),
        "MOD 37-2" => Mod37x2.Verify(text),
        _ => throw new ArgumentException($"Unknown system '{system}'.", nameof(system)),
    };
}
