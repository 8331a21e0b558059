using System.Net;
using Cornerwright.Web.Hosting;

namespace Cornerwright.Web.Tests.Hosting;

public sealed class AcceptedNamesTests
{
    private static readonly Machine Bench = new(
        ["bench", "bench.local", "bench.workshop.example"],
        () => [IPAddress.Loopback, IPAddress.Parse("192.168.7.20"), IPAddress.Parse("fe80::2%7"), IPAddress.Parse("2001:db8::20")]);

    [Theory]
    [InlineData("localhost")]
    [InlineData("LocalHost")]
    [InlineData("localhost.")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1.")]
    [InlineData("127.45.6.7")]
    [InlineData("[::1]")]
    [InlineData("::1")]
    [InlineData("[0:0:0:0:0:0:0:1]")]
    [InlineData("[::ffff:127.0.0.1]")]
    public void Loopback_is_always_a_name_of_ours(string host) => Assert.True(Of(null, null).Accepts(host));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(".")]
    [InlineData("localhost..")]
    [InlineData("localhost.evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("evil-localhost")]
    [InlineData("app.localhost")]
    [InlineData("127.1")]
    [InlineData("2130706433")]
    [InlineData("0x7f.0.0.1")]
    [InlineData("0177.0.0.1")]
    [InlineData("0.0.0.0")]
    [InlineData("[::]")]
    [InlineData("128.0.0.1")]
    [InlineData("192.168.7.20")]
    [InlineData("[::2]")]
    [InlineData("bench")]
    [InlineData("*")]
    public void Nothing_else_is_until_it_is_chosen(string? host) => Assert.False(Of(null, null).Accepts(host));

    [Theory]
    [InlineData("bench", true)]
    [InlineData("BENCH.local.", true)]
    [InlineData("bench.workshop.example", true)]
    [InlineData("192.168.7.20", true)]
    [InlineData("[::ffff:192.168.7.20]", true)]
    [InlineData("[fe80::2]", true)]
    [InlineData("[2001:db8::20]", true)]
    [InlineData("localhost", true)]
    [InlineData("192.168.7.21", false)]
    [InlineData("0.0.0.0", false)]
    [InlineData("bench.evil.example", false)]
    [InlineData("workshop.example", false)]
    public void On_the_network_this_machine_s_names_and_addresses_are_ours_and_nobody_else_s(string host, bool ours) =>
        Assert.Equal(ours, Of(null, Bench).Accepts(host));

    [Fact]
    public void An_address_that_comes_while_we_run_is_known_at_once()
    {
        List<IPAddress> now = [];
        var names = Of(null, new Machine([], () => now));
        Assert.False(names.Accepts("10.0.0.9"));
        now.Add(IPAddress.Parse("10.0.0.9"));
        Assert.True(names.Accepts("10.0.0.9"));
    }

    [Fact]
    public void Chosen_names_are_added_as_browsers_will_send_them()
    {
        var names = Of("Garage.Example, 10.1.2.3;bücher.example [2001:db8::1] last.example.", null);
        string[] hosts = ["garage.example", "10.1.2.3", "xn--bcher-kva.example", "[2001:db8:0::1]", "last.example", "localhost"];
        foreach (string host in hosts)
        {
            Assert.True(names.Accepts(host), host);
        }

        Assert.False(names.Accepts("example"));
        Assert.False(names.Accepts("sub.garage.example"));
    }

    [Fact]
    public void What_cannot_be_a_name_is_refused_all_at_once()
    {
        var problems = AcceptedNames.Of("http://garage.example,good.example,*,garage.example:80,a/b", null).Problems;
        Assert.Equal(["http://garage.example", "*", "garage.example:80", "a/b"], problems.Select(p => p.Given));
        Assert.All(problems, p => Assert.Equal("Write it without http://, port, path or *.", p.Cure));
    }

    [Theory]
    [InlineData("http://localhost", true)]
    [InlineData("http://localhost:5210", true)]
    [InlineData("HTTPS://LOCALHOST:1", true)]
    [InlineData("http://127.0.0.1:5210", true)]
    [InlineData("http://[::1]:5210", true)]
    [InlineData("http://garage.example", true)]
    [InlineData("https://garage.example.:8443", true)]
    [InlineData(null, false)]
    [InlineData("", false)]
    [InlineData("null", false)]
    [InlineData("localhost", false)]
    [InlineData("//localhost", false)]
    [InlineData("file://localhost", false)]
    [InlineData("file:///home/me/page.html", false)]
    [InlineData("chrome-extension://localhost", false)]
    [InlineData("http://evil.example", false)]
    [InlineData("http://localhost.evil.example", false)]
    [InlineData("http://localhost@evil.example", false)]
    [InlineData("http://evil.example@localhost", false)]
    [InlineData("http://evil.example/localhost", false)]
    [InlineData("http://evil.example#localhost", false)]
    [InlineData("http://localhost http://evil.example", false)]
    [InlineData("http://localhost, http://evil.example", false)]
    public void A_page_is_ours_by_the_name_in_its_origin(string? origin, bool ours) =>
        Assert.Equal(ours, Of("garage.example", null).AcceptsOrigin(origin));

    [Fact]
    public void The_addresses_told_are_such_as_can_be_typed_elsewhere()
    {
        Assert.Equal(["http://127.0.0.1:5210", "http://192.168.7.20:5210"], Bench.Reach("http://0.0.0.0:5210"));
        Assert.Equal(["http://127.0.0.1:5210"], Bench.Reach("http://127.0.0.1:5210"));
    }

    [Fact]
    public void The_machine_this_runs_on_knows_its_loopback_and_its_name()
    {
        var here = Machine.Here();
        Assert.Contains(here.Names, n => n.StartsWith(Environment.MachineName, StringComparison.OrdinalIgnoreCase));
        Assert.True(here.Owns(IPAddress.Loopback));
        Assert.False(here.Owns(IPAddress.Parse("203.0.113.7")));
    }

    private static AcceptedNames Of(string? configured, Machine? machine) => AcceptedNames.Of(configured, machine).Value;
}
