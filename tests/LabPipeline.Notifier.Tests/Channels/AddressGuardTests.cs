using System.Net;
using LabPipeline.Notifier.Channels;

namespace LabPipeline.Notifier.Tests.Channels;

public sealed class AddressGuardTests
{
    // IANA special-purpose address registries for IPv4 and IPv6 (RFC 6890 and successors), from memory.
    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("127.255.255.254")]
    [InlineData("0.0.0.0")]
    [InlineData("10.0.0.1")]
    [InlineData("172.16.0.1")]
    [InlineData("172.31.255.255")]
    [InlineData("192.168.1.1")]
    [InlineData("169.254.169.254")]
    [InlineData("100.64.0.1")]
    [InlineData("192.0.2.1")]
    [InlineData("198.18.0.1")]
    [InlineData("224.0.0.1")]
    [InlineData("255.255.255.255")]
    [InlineData("::1")]
    [InlineData("::")]
    [InlineData("::ffff:127.0.0.1")]
    [InlineData("::ffff:169.254.169.254")]
    [InlineData("::127.0.0.1")]
    [InlineData("fe80::1")]
    [InlineData("fec0::1")]
    [InlineData("fc00::1")]
    [InlineData("fd12:3456::1")]
    [InlineData("ff02::1")]
    [InlineData("64:ff9b::7f00:1")]
    [InlineData("2002:7f00:1::")]
    [InlineData("2001:0:7f00:1::")]
    [InlineData("2001:db8::1")]
    public void Allows_WhenTheAddressIsNotPublic_Refuses(string address) => Assert.False(new AddressGuard([]).Allows(IPAddress.Parse(address)));

    [Theory]
    [InlineData("8.8.8.8")]
    [InlineData("172.32.0.1")]
    [InlineData("172.15.255.255")]
    [InlineData("100.128.0.1")]
    [InlineData("2606:4700::1")]
    [InlineData("::ffff:8.8.8.8")]
    public void Allows_WhenTheAddressIsPublic_LetsItPass(string address) => Assert.True(new AddressGuard([]).Allows(IPAddress.Parse(address)));

    [Fact]
    public void Allows_WhenANetworkIsListed_LetsOnlyThatPass()
    {
        var guard = new AddressGuard([IPNetwork.Parse("10.1.2.0/24")]);

        Assert.True(guard.Allows(IPAddress.Parse("10.1.2.3")));
        Assert.True(guard.Allows(IPAddress.Parse("::ffff:10.1.2.3")));
        Assert.False(guard.Allows(IPAddress.Parse("10.1.3.3")));
    }
}
