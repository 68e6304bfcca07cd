using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Quality.Rules;

/// <summary>A complete file could not be read, so nothing of it is stored, and no later file of that name has taken its place.</summary>
public sealed class FileRefusedRule : IRule<FileEvidence>
{
    public string Name => "file refused";

    public IEnumerable<Finding> Evaluate(FileEvidence evidence)
    {
        if (evidence.State != FileState.Refused || evidence.ReplacedBy is not null)
        {
            yield break;
        }

        yield return Findings.Of(
            this, evidence, FindingLevel.Block, "file",
            $"{evidence.Title} ({evidence.Kind}) was refused and nothing of it is stored: {evidence.Reason ?? evidence.ReasonCode ?? "no reason was noted"}",
            "Correct the cause at the instrument or in the profile and drop the file again under the same name; this clears by itself when it is read.",
            new FactSheet().Add("file", evidence.Name).Add("reason code", evidence.ReasonCode ?? "").Add("reason", evidence.Reason ?? ""));
    }
}
