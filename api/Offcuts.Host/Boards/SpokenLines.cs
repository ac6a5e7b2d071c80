using Offcuts.Domain;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>Reads what makers say in a line, by the names that the shop uses: of species at hand, and of the places where its boards lie.</summary>
internal sealed class SpokenLines(BoardStore boards)
{
    /// <summary>The readings of lines, one after the other.</summary>
    public IReadOnlyList<QuickReading> Read(IEnumerable<string> lines, QuickCarry carry, Shop shop, SpeciesCatalogue catalogue)
    {
        var (species, places) = boards.Names();
        return QuickLog.Read(lines, new QuickWords(catalogue, species, places), shop.Unit, carry);
    }

    /// <summary>The reading of a line that is understood; line breaks in it are spaces. It may name no board.</summary>
    /// <param name="line">The line.</param>
    /// <param name="carry">What carries on from before.</param>
    /// <param name="shop">Whose unit bare numbers have.</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <param name="pointer">Where the line stands in the request.</param>
    /// <param name="message">What to say where it is not understood.</param>
    /// <exception cref="OffcutsException">It is not understood.</exception>
    public QuickReading ReadOne(string line, QuickCarry carry, Shop shop, SpeciesCatalogue catalogue, string pointer, string message)
    {
        var reading = Read([line.ReplaceLineEndings(" ")], carry, shop, catalogue)[0];
        return reading.Faults.Count == 0 ? reading
            : throw new OffcutsException(ErrorCode.Invalid, message, [.. reading.Faults.Select(fault => new InputFault(pointer, fault.Detail, 1, fault.Column))]);
    }
}
