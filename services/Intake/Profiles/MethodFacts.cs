using System.Globalization;
using System.Text.Json;

namespace LabPipeline.Intake.Profiles;

/// <summary>The method behind the readings: what must be known to compare them with others.</summary>
/// <remarks>
/// <c>Facts</c>: free facts by name, such as illuminant, observer, hunterForm.
/// <c>LimitsOfQuantitation</c>: by quantity name, in the quantity's canonical unit.
/// </remarks>
public sealed record MethodFacts(
    string Name,
    string Version,
    IReadOnlyDictionary<string, string> Facts,
    IReadOnlyDictionary<string, decimal> LimitsOfQuantitation)
{
    /// <summary>Facts and limits by name, as the ledger keeps them with each file.</summary>
    public string Document => field ??= Write();

    private string Write()
    {
        var facts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, text) in Facts)
        {
            facts.Add(name, text);
        }

        foreach (var (quantity, limit) in LimitsOfQuantitation)
        {
            facts.Add("limitOfQuantitation." + quantity, limit.ToString(CultureInfo.InvariantCulture));
        }

        return JsonSerializer.Serialize(facts);
    }
}
