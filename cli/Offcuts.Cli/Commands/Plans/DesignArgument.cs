using System.CommandLine;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>The design that a command is about: one of the store, or a file that is stored first.</summary>
internal static class DesignArgument
{
    /// <summary>The argument.</summary>
    public static readonly Argument<string> Design = new("DESIGN")
    {
        Description = "A design of the store by its reference, or the path of a design file, or - for standard input",
    };

    /// <summary>Its reference, or the version of the file that was stored.</summary>
    public static Task<string> ReferenceAsync(Run run, IOffcutsApi api) => ReferenceAsync(run, api, run.Get(Design));

    /// <summary>Whether a design is named by a file. Only what looks like a path is one: a stored design must not be hidden by a file that happens to have its name.</summary>
    public static bool IsFile(string design) => design == "-" || design.Contains('/', StringComparison.Ordinal) || design.Contains('\\', StringComparison.Ordinal)
        || Path.GetExtension(design).ToLowerInvariant() is ".yaml" or ".yml" or ".json";

    /// <summary>The same of a design that was written otherwise.</summary>
    public static async Task<string> ReferenceAsync(Run run, IOffcutsApi api, string design)
    {
        if (!IsFile(design))
        {
            return design;
        }

        using var document = await Documents.ReadAsync(run, design);
        var stored = await api.StoreDesignAsync(document, run.Cancellation);
        run.Say($"Stored '{stored.Design.Name}' as {stored.Reference}, version {stored.Version}.");
        DefectNotes.Say(run, stored.Design);
        return stored.Version;
    }
}
