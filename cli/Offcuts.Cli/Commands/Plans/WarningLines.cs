using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>A plan's warnings as lines to read, each thing told once.</summary>
internal static class WarningLines
{
    /// <summary>The lines; a warning of a kind that this program does not know keeps the server's words.</summary>
    public static IEnumerable<string> Of(IReadOnlyList<WarningRecord> warnings, DisplayUnit unit)
    {
        var known = warnings.Select(warning => (Warning: warning, Kind: Kind(warning.Code))).ToList();
        return PlanText.Of([.. known.Where(one => one.Kind is not null).Select(one => ToWarning(one.Warning, one.Kind!.Value))], unit)
            .Concat(known.Where(one => one.Kind is null).Select(one => one.Warning.Text));
    }

    private static WarningKind? Kind(string code) =>
        Enum.TryParse<WarningKind>(code.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out var kind) && Enum.IsDefined(kind) ? kind : null;

    private static PlanWarning ToWarning(WarningRecord warning, WarningKind kind) =>
        new(kind, warning.Subject, Mm(warning.ValueMm), Mm(warning.LimitMm));

    private static Length? Mm(decimal? value) => value is { } given ? Length.FromMillimetres(given) : null;
}
