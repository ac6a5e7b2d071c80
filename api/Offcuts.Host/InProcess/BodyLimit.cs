namespace Offcuts.Host.InProcess;

/// <summary>Refuses bodies that are too large, as Kestrel does behind a port.</summary>
internal static class BodyLimit
{
    public static void UseBodyLimit(this IApplicationBuilder app, long mostBytes) => app.Use((context, next) =>
        context.Request.ContentLength > mostBytes
            ? throw new BadHttpRequestException($"Request body too large. The max request body size is {mostBytes} bytes.", StatusCodes.Status413PayloadTooLarge)
            : next(context));
}
