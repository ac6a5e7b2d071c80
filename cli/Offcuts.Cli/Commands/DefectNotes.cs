using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands;

/// <summary>Notes on words for defects that nobody uses, because a slip of the pen makes a kind of its own.</summary>
internal static class DefectNotes
{
    /// <summary>Says one for each such kind that a design tolerates.</summary>
    public static void Say(Run run, DesignEntry design) => Say(run, [
        .. (design.Parts ?? []).SelectMany(part => part.Tolerates ?? []), .. (design.Panels ?? []).SelectMany(panel => panel.Tolerates ?? [])]);

    /// <summary>Says one for each such kind.</summary>
    public static void Say(Run run, IEnumerable<string> kinds)
    {
        foreach (var advice in kinds.Distinct(StringComparer.Ordinal).Select(DefectKinds.Advice).OfType<string>())
        {
            run.Say($"Mind: {advice}");
        }
    }
}
