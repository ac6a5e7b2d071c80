using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Tests;

public sealed class ConnectionChoiceTests
{
    // Flag before environment before default; XDG Base Directory Specification: relative values are ignored.
    [Theory]
    [InlineData("http://a:1", null, "http://b:2", "/d", "/x", "http://a:1/", null)]
    [InlineData(null, "/flag", "http://b:2", "/d", "/x", null, "/flag/offcuts.db")]
    [InlineData(null, null, "http://b:2", "/d", "/x", "http://b:2/", null)]
    [InlineData(null, null, null, "/d", "/x", null, "/d/offcuts.db")]
    [InlineData(null, null, "", "", "/x", null, "/x/offcuts/offcuts.db")]
    [InlineData(null, null, null, null, "relative", null, "/home/mk/.local/share/offcuts/offcuts.db")]
    [InlineData(null, null, null, null, null, null, "/home/mk/.local/share/offcuts/offcuts.db")]
    public void The_first_that_is_given_decides(
        string? server, string? data, string? url, string? folder, string? xdg, string? expectedServer, string? expectedDatabase)
    {
        var choice = ConnectionChoice.Make(server, data, name => name switch
        {
            "OFFCUTS_URL" => url,
            "OFFCUTS_DATA" => folder,
            "XDG_DATA_HOME" => xdg,
            "HOME" => "/home/mk",
            _ => null,
        });

        Assert.Equal(expectedServer, choice.Server?.ToString());
        Assert.Equal(expectedDatabase, choice.DatabasePath);
    }

    [Theory]
    [InlineData("ftp://a", null)]
    [InlineData("shop", null)]
    [InlineData("http://a", "/d")]
    public void What_cannot_be_is_a_usage_fault(string server, string? data) =>
        Assert.Equal("usage", Assert.Throws<CliException>(() => ConnectionChoice.Make(server, data, _ => null)).Code);
}
