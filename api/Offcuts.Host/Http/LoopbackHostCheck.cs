using System.Net;
using Offcuts.Domain;

namespace Offcuts.Host.Http;

/// <summary>Keeps web pages of other sites away from a service on the loopback interface (DNS rebinding).</summary>
internal static class LoopbackHostCheck
{
    public static void UseLoopbackHostCheck(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        var host = context.Request.Host.Host.Trim('[', ']');
        return host == "localhost" || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address))
            ? next(context)
            : throw new OffcutsException(ErrorCode.Invalid, $"The Host '{host}' is not this machine's. Use 127.0.0.1 or localhost.", new InputFault("#", "Mend the Host header."));
    });
}
