namespace Offcuts.Host.Reference;

/// <summary>What the reference says of an operation beyond what its handler's types tell.</summary>
/// <param name="Method">HTTP method; HEAD goes with GET.</param>
/// <param name="Path">Path as routes write it.</param>
/// <param name="Id">Operation id.</param>
/// <param name="Summary">One sentence.</param>
internal sealed record Operation(string Method, string Path, string Id, string Summary)
{
    /// <summary>Type of the JSON body, if it takes one.</summary>
    public Type? Body { get; init; }

    /// <summary>A JSON body that works.</summary>
    public string? Example { get; init; }

    /// <summary>A document that works, where YAML is taken.</summary>
    public string? Document { get; init; }

    /// <summary>A table that works, where CSV is taken.</summary>
    public string? Table { get; init; }

    /// <summary>Query and header parameters: name and what it is.</summary>
    public IReadOnlyList<(string Name, string Description)> Query { get; init; } = [];
}
