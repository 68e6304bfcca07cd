using System.Globalization;
using LabPipeline.Science.Randomisation;
using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Tests.Randomisation;

/// <summary>
/// PCG-XSH-RR 64/32 against the expected output that the generator's author published with it (pcg-c, test-high/expected/check-pcg32.out:
/// seed 42, stream 54; per round six numbers, the same six again, 65 tosses, 33 rolls, one shuffled pack).
/// </summary>
public sealed class Pcg32Tests
{
    private const int Rounds = 20_000;

    // A correct generator fails one of these tests in a million draws of other seeds; the seeds here are fixed.
    private const double Improbable = 1e-6;

    private static readonly string[] Published =
    [
        "a15c02b7 7b47f409 ba1d3330 83d2f293 bfa4784b cbed606e",
        "HHTTTHTHHHTHTTTHHHHHTTTHHHTHTHTHTTHTTTHHHHHHTTTTHHTTTTTHTTTTTTTHT",
        "3 4 1 1 2 2 3 2 4 3 2 4 3 3 5 2 3 1 3 1 5 1 4 1 5 6 4 6 6 2 6 3 3",
        "Qd Ks 6d 3s 3d 4c 3h Td Kc 5c Jh Kd Jd As 4s 4h Ad Th Ac Jc 7s Qs 2s 7h Kh 2d 6c Ah 4d Qh 9h 6s 5s 2c 9c Ts 8d 9s 3c 8c Js 5d 2h 6h 7d 8s 9d 5h 8h Qc 7c Tc",
        "74ab93ad 1c1da000 494ff896 34462f2f d308a3e5 0fa83bab",
        "HHHHHHHHHHTHHHTHTHTHTHTTTTHHTTTHHTHHTHTTHHTTTHHHHHHTHTTHTHTTTTTTT",
        "5 1 1 3 3 2 4 5 3 2 2 6 4 3 2 4 2 4 3 2 3 6 3 2 3 4 2 4 1 1 5 4 4",
        "7d 2s 7h Td 8s 3c 3d Js 2d Tc 4h Qs 5c 9c Th 2c Jc Qd 9d Qc 7s 3s 5s 6h 4d Jh 4c Ac 4s 5h 5d Kc 8h 8d Jd 9s Ad 6s 6c Kd 2h 3h Kh Ts Qh 9h 6d As 7c Ks Ah 8c",
    ];

    [Fact]
    public void Draws_FromThePublishedSeed_GiveThePublishedNumbersTossesRollsAndPacks()
    {
        var generator = new Pcg32(42, 54);
        var pack = "A23456789TJQK".SelectMany(number => "hcds".Select(suit => $"{number}{suit}")).ToList();
        var drawn = new List<string>();
        for (var round = 0; round < 2; round++)
        {
            drawn.Add(string.Join(' ', Enumerable.Range(0, 6).Select(_ => generator.Next().ToString("x8", CultureInfo.InvariantCulture))));
            drawn.Add(string.Concat(Enumerable.Range(0, 65).Select(_ => generator.Below(2) == 1 ? 'H' : 'T')));
            drawn.Add(string.Join(' ', Enumerable.Range(0, 33).Select(_ => generator.Below(6) + 1)));
            drawn.Add(string.Join(' ', generator.Shuffle(pack)));
        }

        Assert.Equal(Published, drawn);
    }

    [Fact]
    public void Shuffle_OverManyNamedStreams_GivesEveryOrderEquallyOften()
    {
        var counts = Enumerable.Range(0, Rounds)
            .Select(round => string.Concat(Pcg32.Named(20261125, $"trial {round}").Shuffle("abcd")))
            .CountBy(order => order)
            .Select(pair => pair.Value)
            .ToList();

        Assert.Equal(24, counts.Count);
        Assert.True(ChiSquared.Upper(Statistic(counts, Rounds / 24.0), 23) > Improbable);
    }

    [Fact]
    public void Shuffle_OfTwoStreamsWithOneSeed_GivesIndependentOrders()
    {
        var counts = Enumerable.Range(0, Rounds)
            .Select(seed => string.Concat(Pcg32.Named(seed, "NT26/block 1").Shuffle("abc")) + string.Concat(Pcg32.Named(seed, "NT26/block 2").Shuffle("abc")))
            .CountBy(orders => orders)
            .Select(pair => pair.Value)
            .ToList();

        Assert.Equal(36, counts.Count);
        Assert.True(ChiSquared.Upper(Statistic(counts, Rounds / 36.0), 35) > Improbable);
    }

    [Fact]
    public void Below_OfABoundThatDoesNotDivideEvenly_IsUnbiased()
    {
        // Without drawing again the first third would come up 3/8 of the time, 833 too often; 400 is six standard deviations.
        var generator = new Pcg32(7, 1);
        var first = Enumerable.Range(0, Rounds).Count(_ => generator.Below(3 << 29) < 1 << 29);

        Assert.InRange(first, (Rounds / 3) - 400, (Rounds / 3) + 400);
    }

    [Fact]
    public void Named_WhenSeedIsNegative_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => Pcg32.Named(-1, "block 1"));

    private static double Statistic(IReadOnlyList<int> counts, double expected) => counts.Sum(count => (count - expected) * (count - expected) / expected);
}
