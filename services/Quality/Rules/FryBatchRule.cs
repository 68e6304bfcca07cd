namespace LabPipeline.Quality.Rules;

/// <summary>Oil temperature or time of a fry batch lies outside the window (set 360 degF, 182.2 degC, for 2 min 10 s).</summary>
public sealed class FryBatchRule : IRule<RunEvidence>
{
    public string Name => "fry batch out of window";

    public IEnumerable<Finding> Evaluate(RunEvidence evidence)
    {
        foreach (var batch in evidence.FryReadings.GroupBy(reading => reading.RowKey).OrderBy(batch => batch.Key, StringComparer.Ordinal))
        {
            var outside = batch.Where(reading => !reading.Quantity.IsPlausible(reading.Value)).OrderBy(reading => reading.QuantityId).ToList();
            if (outside.Count == 0)
            {
                continue;
            }

            var facts = new FactSheet();
            outside.ForEach(reading => facts.Add(reading.Quantity.Name, reading.Value).Add(reading.Quantity.Name + " window", Window(reading)));
            var place = NumberText.Invariant($"{outside[0].FileName} line {outside[0].Line}");
            yield return Findings.Of(
                this, evidence, FindingLevel.Hold, "batch " + batch.Key,
                $"Fry batch {batch.Key} ({evidence.Subject}, {place}): "
                    + $"{string.Join("; ", outside.Select(reading => $"{reading.Quantity.Name} {NumberText.With(reading.Value, reading.Quantity.Unit)}, window {Window(reading)}"))}.",
                "Fry spare slices again at the set point if there are any; otherwise colours of this batch are not comparable. Let the oil recover, fry smaller loads.",
                facts);
        }
    }

    private static string Window(FryReading reading) => $"{NumberText.Of(reading.Quantity.Lowest)} to {NumberText.Of(reading.Quantity.Highest)}";
}
