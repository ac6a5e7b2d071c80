using Offcuts.Contracts;
using Offcuts.Storage;

namespace Offcuts.Host.Journals;

/// <summary>The journal from the store to the wire.</summary>
internal static class JournalMapping
{
    public static JournalLineRecord ToRecord(JournalLine line) => new(line.Line, line.At, Words.Of(line.Kind), line.Boards, line.PlanId, line.Undoes, line.UndoneBy, line.StockTake);

    public static JournalCheckRecord ToRecord(JournalCheck check) => new(
        check.Differences.Count == 0, check.Lines, check.Boards,
        [.. check.Differences.Select(difference => new JournalDifferenceRecord(difference.BoardId, difference.Detail))]);
}
