using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.StockTakes;

/// <summary>Takes the steps of a stock-take.</summary>
internal sealed class StockTakeSteps(StockTakeStore store, SpokenLines lines, Workshop workshop)
{
    private const string NotUnderstood = "The step is not understood, and nothing was changed: see errors.";

    /// <summary>Takes one step; how much is unseen after it is left open.</summary>
    public StockTakeStepRecord Take(StockTake take, StockTakeStepEntry entry)
    {
        var (shop, catalogue) = workshop.Now();
        return entry switch
        {
            { Confirm: { } id, Correct: null, Strike: null, Line: null, Forget: null } => Told(store.Confirm(take.Number, Written(id))),
            { Confirm: null, Correct: { } correction, Strike: null, Line: null, Forget: null } => Told(store.Correct(take.Number, Corrected(correction, catalogue))),
            { Confirm: null, Correct: null, Strike: { } id, Line: null, Forget: null } => Told(store.Strike(take.Number, Written(id))),
            { Confirm: null, Correct: null, Strike: null, Line: { } line, Forget: null } => Added(take, line, entry.Carry, shop, catalogue),
            { Confirm: null, Correct: null, Strike: null, Line: null, Forget: { } id } => Told(store.Forget(take.Number, Written(id))),
            _ => throw Invalid(new InputFault("#", "Give exactly one of confirm, correct, strike, line and forget.")),
        };

        StockTakeStepRecord Told(StockTakeStep step) => StockTakeMapping.ToRecord(step, catalogue);
    }

    private static Board Corrected(StockTakeCorrection correction, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        var board = BoardMapping.ToLogged(correction.Board, Written(correction.Id), catalogue, "#/correct/board", faults);
        faults.ThrowIfAny();
        return board;
    }

    private StockTakeStepRecord Added(StockTake take, string line, LineCarry? said, Shop shop, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        var carry = BoardLineMapping.ToCarry(said, catalogue, faults) with { Place = take.Place };
        faults.ThrowIfAny();
        var reading = lines.ReadOne(line, carry, shop, catalogue, "#/line", NotUnderstood);
        if (reading.Carry.Place != take.Place)
        {
            throw Invalid(new InputFault("#/line", $"This is a stock-take of '{take.Place}': leave the place out, or log what lies elsewhere by itself."));
        }

        var next = BoardLineMapping.ToRecord(reading.Carry);
        return reading.Board is { } board
            ? StockTakeMapping.ToRecord(store.Add(take.Number, board.ToBoard("", default)), catalogue) with { Understood = reading.Understood, Carry = next }
            : new StockTakeStepRecord(null, null, null, reading.Understood, next, 0);
    }

    // As people write it: in any case, with spaces between the signs.
    private static string Written(string id) => BoardIds.TryNormalise(id, out var known) ? known : BoardEndpoints.Written(id);

    private static OffcutsException Invalid(InputFault fault) => new(ErrorCode.Invalid, NotUnderstood, fault);
}
