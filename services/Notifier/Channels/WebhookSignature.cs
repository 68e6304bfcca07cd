using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace LabPipeline.Notifier.Channels;

/// <summary>The signature of the Standard Webhooks specification, version 1: HMAC-SHA256 over id, time and body.</summary>
public static class WebhookSignature
{
    public const string SecretPrefix = "whsec_";

    private const int ShortestKey = 24;
    private const int LongestKey = 64;

    /// <returns>The value of the <c>webhook-signature</c> header.</returns>
    public static string Sign(byte[] key, string id, long unixSeconds, ReadOnlySpan<byte> body)
    {
        var head = Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{id}.{unixSeconds}."));
        return "v1," + Convert.ToBase64String(HMACSHA256.HashData(key, (ReadOnlySpan<byte>)[.. head, .. body]));
    }

    /// <summary>The key inside a secret written as <c>whsec_</c> and base64; null when it is not 24 to 64 bytes so written.</summary>
    public static byte[]? KeyOf(string secret)
    {
        if (!secret.StartsWith(SecretPrefix, StringComparison.Ordinal))
        {
            return null;
        }

        var key = new byte[secret.Length];
        return Convert.TryFromBase64String(secret[SecretPrefix.Length..], key, out var length) && length is >= ShortestKey and <= LongestKey
            ? key[..length]
            : null;
    }
}
