namespace LabPipeline.Hosting.Settings;

/// <summary>A password or key that does not show itself in logs, messages or a debugger's list.</summary>
public sealed class Secret(string value)
{
    private const string Hidden = "(secret)";

    public string Reveal() => value;

    /// <summary><paramref name="text"/> with the secret, should a server have echoed it, taken out.</summary>
    public string Redact(string text) => value.Length == 0 ? text : text.Replace(value, Hidden, StringComparison.Ordinal);

    public override string ToString() => Hidden;
}
