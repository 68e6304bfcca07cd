namespace LabPipeline.Notifier.Settings;

/// <summary>One program that is told of alerts.</summary>
public sealed class WebhookOptions : ChannelOptions
{
    /// <summary>Where to post; its host must be in <see cref="NotifierOptions.WebhookHosts"/>.</summary>
    public string Url { get; set; } = "";

    /// <summary>Whether the address may be plain <c>http</c>. Default false.</summary>
    public bool AllowPlainHttp { get; set; }

    /// <summary>File with the signing secret, <c>whsec_</c> and base64; readable by its owner only.</summary>
    public string SecretFile { get; set; } = "";

    /// <summary>Environment variable with the signing secret. Not used when <see cref="SecretFile"/> is set.</summary>
    public string SecretVariable { get; set; } = "";
}
