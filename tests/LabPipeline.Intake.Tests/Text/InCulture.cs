using System.Globalization;

namespace LabPipeline.Intake.Tests.Text;

/// <summary>Runs a test under another culture: one with decimal comma, one with its own i and I.</summary>
internal sealed class InCulture : IDisposable
{
    private readonly CultureInfo _before = CultureInfo.CurrentCulture;

    public InCulture(string name) => CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);

    public void Dispose() => CultureInfo.CurrentCulture = _before;
}
