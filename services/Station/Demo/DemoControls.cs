using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Station.Demo;

/// <summary>What the controls of the invented laboratory should read: stated targets with tolerances, since no chart has runs enough at the start.</summary>
internal static class DemoControls
{
    private static readonly DateTimeOffset Since = new(2025, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly (string Instrument, string Material, Quantity Quantity, decimal Target, decimal Tolerance)[] Targets =
    [
        .. new[] { "sugar analyser A", "sugar analyser B" }.SelectMany(analyser => new[]
        {
            (analyser, "CTRL-LOW", QuantityCatalogue.GlucoseInExtract, 0.050m, 0.0025m),
            (analyser, "CTRL-LOW", QuantityCatalogue.TotalGlucoseInExtract, 0.100m, 0.005m),
            (analyser, "CTRL-HIGH", QuantityCatalogue.GlucoseInExtract, 0.500m, 0.025m),
            (analyser, "CTRL-HIGH", QuantityCatalogue.TotalGlucoseInExtract, 1.000m, 0.05m),
        }),
        .. new[] { "colour meter 1", "colour meter 2" }.SelectMany(meter => new[]
        {
            (meter, "check tile", QuantityCatalogue.HunterL, 55.2m, 0.3m),
            (meter, "check tile", QuantityCatalogue.HunterA, 2.1m, 0.3m),
            (meter, "check tile", QuantityCatalogue.HunterB, 15.6m, 0.3m),
        }),
        ("hydrostatic balance", "brass check mass 1 kg", QuantityCatalogue.WeightInAir, 1000m, 1m),
        ("hydrostatic balance", "brass check mass 1 kg", QuantityCatalogue.WeightInWater, 880.95m, 1m),
        ("bench balance", "check mass 500 g", QuantityCatalogue.MassBeforePeel, 500m, 0.1m),
        ("chip scoring", "REF-CHIP-1", QuantityCatalogue.StemEndDefect, 1m, 1m),
        ("chip scoring", "REF-CHIP-4", QuantityCatalogue.StemEndDefect, 4m, 1m),
    ];

    /// <summary>States the targets once; a laboratory that went on from there is left alone.</summary>
    public static async Task StateAsync(WarehouseSession session, DateTimeOffset now)
    {
        if ((await ControlLimitStore.ListAsync(session)).Count > 0)
        {
            return;
        }

        foreach (var (instrument, material, quantity, target, tolerance) in Targets)
        {
            await ControlLimitStore.KeepAsync(session, new ControlLimitRow
            {
                Instrument = instrument,
                Material = material,
                QuantityId = quantity.Id,
                Kind = ControlLimitKinds.Target,
                Centre = target,
                Lower = target - tolerance,
                Upper = target + tolerance,
                InForceFrom = Since,
                DecidedAt = now,
                DecidedBy = "demo",
                Why = "certificate of the material, invented",
            });
        }
    }
}
