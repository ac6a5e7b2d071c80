namespace Offcuts.Contracts;

/// <summary>An error answer (RFC 9457, <c>application/problem+json</c>).</summary>
/// <param name="Type">Path of the page that documents this kind of problem.</param>
/// <param name="Title">Fixed for each type.</param>
/// <param name="Status">The HTTP status.</param>
/// <param name="Detail">What is wrong and how to mend it.</param>
/// <param name="Code">The last word of the type.</param>
/// <param name="Errors">Each fault with its place in the request; empty if there is no place to name.</param>
/// <param name="TraceId">Finds the request in the log.</param>
public sealed record Problem(
    string Type, string Title, int Status, string Detail, string Code, IReadOnlyList<ProblemFault> Errors, string TraceId);

/// <summary>One fault.</summary>
/// <param name="Pointer">JSON pointer into the body (<c>#/items/2/species</c>), or <c>?name</c> for a query parameter.</param>
/// <param name="Detail">What is wrong and how to mend it.</param>
/// <param name="Line">Line of the text, from 1, where known.</param>
/// <param name="Column">Column in that line, from 1, where known.</param>
public sealed record ProblemFault(string Pointer, string Detail, int? Line = null, int? Column = null);

/// <summary>Answer of <c>/health</c>.</summary>
/// <param name="Status"><c>ok</c>.</param>
/// <param name="Version">Version of the service.</param>
public sealed record Health(string Status, string Version);
