namespace LabPipeline.Quality.Rules;

/// <summary>Readings are there but give no result: a mass of zero, weights the wrong way round, a method that is not fully stated.</summary>
public sealed class ResultNotComputableRule : IRule<SampleEvidence>
{
    public string Name => "result not computable";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence)
    {
        foreach (var group in evidence.Computed.Faults.GroupBy(fault => fault.Where.Length == 0 ? fault.Quantity.Name : $"{fault.Quantity.Name}, {fault.Where}"))
        {
            var fault = group.First();
            var where = fault.Where.Length == 0 ? "" : ", " + fault.Where;
            yield return Findings.Of(
                this, evidence, fault.IsUnusable ? FindingLevel.Block : FindingLevel.Note, group.Key,
                $"{evidence.Title}{where}: {fault.Quantity.Name} {fault.Found}.",
                fault.Advice,
                new FactSheet().Add("quantity", fault.Quantity.Name).Add("found", fault.Found));
        }
    }
}
