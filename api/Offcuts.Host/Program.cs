using Offcuts.Domain;
using Offcuts.Host;

var data = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
try
{
    var settings = new HostSettings
    {
        DatabasePath = Environment.GetEnvironmentVariable("OFFCUTS_DATABASE") ?? Path.Combine(data, "offcuts", "offcuts.db"),
        ServeReference = true,
        AllowNonLoopback = Environment.GetEnvironmentVariable("OFFCUTS_ALLOW_NON_LOOPBACK") == "1",
    };
    if (Environment.GetEnvironmentVariable("OFFCUTS_URLS") is { Length: > 0 } urls)
    {
        settings = settings with { Urls = urls };
    }

    await using var app = OffcutsHost.Build(settings);
    await app.RunAsync();
    return 0;
}
catch (OffcutsException fault)
{
    await Console.Error.WriteLineAsync(fault.Message);
    return 1;
}
