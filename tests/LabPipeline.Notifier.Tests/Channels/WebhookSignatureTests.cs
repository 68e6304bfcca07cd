using System.Security.Cryptography;
using System.Text;
using LabPipeline.Notifier.Channels;

namespace LabPipeline.Notifier.Tests.Channels;

public sealed class WebhookSignatureTests
{
    // The example that circulates with the Standard Webhooks specification and its reference libraries, from memory; the same value
    // came out of Python's hmac module: base64(hmac(b64decode(key), b'msg_p5j....1614265330.{"test": 2432232314}', sha256)).
    [Fact]
    public void Sign_WhenGivenThePublishedExample_AgreesWithIt()
    {
        var key = WebhookSignature.KeyOf("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw")!;

        var signature = WebhookSignature.Sign(key, "msg_p5jXN8AQM9LWM0D4loKWxJek", 1614265330, """{"test": 2432232314}"""u8);

        Assert.Equal("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=", signature);
    }

    [Theory]
    [InlineData("MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw")]
    [InlineData("whsec_")]
    [InlineData("whsec_AAAA")]
    [InlineData("whsec_not base64 at all, is it?")]
    public void KeyOf_WhenTheSecretIsWrittenWrongly_IsNull(string secret) => Assert.Null(WebhookSignature.KeyOf(secret));

    // Standard Webhooks: keys of 24 to 64 bytes (from memory).
    [Theory]
    [InlineData(23, false)]
    [InlineData(24, true)]
    [InlineData(64, true)]
    [InlineData(65, false)]
    public void KeyOf_WhenTheKeyHasSoManyBytes_TakesTwentyFourToSixtyFour(int bytes, bool taken) =>
        Assert.Equal(taken, WebhookSignature.KeyOf("whsec_" + Convert.ToBase64String(new byte[bytes])) is not null);

    [Fact]
    public void Sign_WhenAByteOfTheBodyChanges_ChangesTheSignature()
    {
        var key = RandomNumberGenerator.GetBytes(32);

        Assert.NotEqual(
            WebhookSignature.Sign(key, "msg_1", 1, Encoding.UTF8.GetBytes("{}")), WebhookSignature.Sign(key, "msg_1", 1, Encoding.UTF8.GetBytes("[]")));
    }
}
