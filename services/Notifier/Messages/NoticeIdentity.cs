using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Warehouse.Channels;

namespace LabPipeline.Notifier.Messages;

/// <summary>Identifiers drawn from what a message says, so that a repeat carries the same one and a rebuilt warehouse never reuses one.</summary>
public static class NoticeIdentity
{
    private const int Characters = 32;

    public static string Of(DueDelivery delivery) => Hash(string.Create(
        CultureInfo.InvariantCulture,
        $"{delivery.Fingerprint}|{delivery.TimesRaised}|{delivery.Event}|{delivery.Channel}|{delivery.DueAt.UtcTicks}"));

    public static string Of(ChannelTest test) =>
        Hash(string.Create(CultureInfo.InvariantCulture, $"test|{test.Channel}|{test.TestId}|{test.AskedAt.UtcTicks}"));

    public static string OfDigest(string channel, DateTimeOffset at) =>
        Hash(string.Create(CultureInfo.InvariantCulture, $"digest|{channel}|{at.UtcTicks}"));

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..Characters];
}
