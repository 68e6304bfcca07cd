using System.Globalization;
using Xunit.v3;

namespace LabPipeline.Testing;

/// <summary>Numbers of the failures in docs/specs/reliability.md whose row names the test; <c>dotnet test --filter Failure=35</c> runs the tests of a row.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ShowsAttribute(params int[] failures) : Attribute, ITraitAttribute
{
    private const string Trait = "Failure";

    public IReadOnlyList<int> Failures => failures;

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() =>
        [.. failures.Select(failure => KeyValuePair.Create(Trait, failure.ToString(CultureInfo.InvariantCulture)))];
}
