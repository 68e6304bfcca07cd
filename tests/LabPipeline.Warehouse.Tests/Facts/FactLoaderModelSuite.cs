using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Tests.Facts;

/// <summary>Loaders against a model that takes facts one by one: whatever files come in whatever order, both keep the same.</summary>
public abstract class FactLoaderModelSuite(DialectName store)
{
    private static readonly string[] Barcodes = ["S26P01T03R2C", "26K70012C"];

    [Theory]
    [Shows(10)]
    [InlineData(1, 40)]
    [InlineData(2, 40)]
    [InlineData(3, 40)]
    [InlineData(4, 7000)] // by bulk copy
    public async Task Files_WhenDrawnAtRandom_LeaveWhatTheModelSays(int seed, int most)
    {
        var random = new Random(seed);
        var model = new List<(string Key, decimal Value, string Barcode, Standing Standing)>();
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        for (var file = 0; file < 6; file++)
        {
            var facts = Enumerable.Range(0, random.Next(1, most)).Select(_ => Draw(random, most)).ToList();

            var (_, counts) = await FactFiles.StoreAsync(scratch, $"{file}", facts);

            Assert.Equal(Take(model, facts), (counts.New, counts.Repeated, counts.Conflicting));
            Assert.Equal(model.Select(row => (row.Key, row.Value, (int)row.Standing)), (await FactFiles.ListAsync(scratch)).Select(row => (row.RowKey, row.Value, row.Standing)));
            await ChangeOneAsync(scratch, model, random);
        }
    }

    private static NewFact Draw(Random random, int most) =>
        FactFiles.Reading($"{random.Next(most / 4)}", random.Next(3) / 4m, Barcodes[random.Next(8) / 7]);

    private static (int New, int Repeated, int Conflicting) Take(List<(string Key, decimal Value, string Barcode, Standing Standing)> model, List<NewFact> facts)
    {
        var (added, repeated, conflicting) = (0, 0, 0);
        var byKey = model.ToLookup(row => row.Key).ToDictionary(rows => rows.Key, rows => rows.ToList());
        foreach (var fact in facts)
        {
            if (!byKey.TryGetValue(fact.RowKey.ToString(), out var known))
            {
                byKey.Add(fact.RowKey.ToString(), known = []);
            }

            var row = (Key: fact.RowKey.ToString(), fact.Value, Barcode: fact.Barcode!, Standing: Standing.InEffect);
            if (known.Any(other => other.Standing is Standing.InEffect or Standing.SetAside))
            {
                if (known.Any(other => other.Value == fact.Value && other.Barcode == fact.Barcode
                    && other.Standing is Standing.InEffect or Standing.SetAside or Standing.Contested))
                {
                    repeated++;
                    continue;
                }

                row.Standing = Standing.Contested;
                conflicting++;
            }
            else
            {
                added++;
            }

            known.Add(row);
            model.Add(row);
        }

        return (added, repeated, conflicting);
    }

    /// <summary>As a person would: takes all rows of one key out, or sets the one in effect aside.</summary>
    private static async Task ChangeOneAsync(ScratchWarehouse scratch, List<(string Key, decimal Value, string Barcode, Standing Standing)> model, Random random)
    {
        var key = model[random.Next(model.Count)].Key;
        var single = model.Count(row => row.Key == key) == 1;
        var standing = single && random.Next(2) == 0 ? Standing.SetAside : Standing.TakenOut;
        await FactFiles.StandAsync(scratch, key, standing);
        for (var index = 0; index < model.Count; index++)
        {
            if (model[index].Key == key)
            {
                model[index] = model[index] with { Standing = standing };
            }
        }
    }
}
