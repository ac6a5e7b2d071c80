using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>A board's warp, ends and estimated sides between the wire and the domain.</summary>
internal static class ConditionMapping
{
    /// <summary>The warp of a board of solid wood; one that it cannot have is a fault.</summary>
    public static Warp ToWarp(WarpRecord? record, BoardKind kind, Dimensions board, string at, Faults faults)
    {
        if (record is null)
        {
            return default;
        }

        var warp = new Warp(Size("bow", record.BowMm), Size("crook", record.CrookMm), Size("cup", record.CupMm), Size("twist", record.TwistMm));
        // A board whose size cannot be read has its fault already.
        var isRead = board.Length > Length.Zero && board.Width > Length.Zero;
        foreach (var (member, detail) in isRead ? WarpRules.Faults(kind, board, warp) : [])
        {
            faults.Add($"{at}/{member}Mm", detail);
        }

        return warp;

        Length Size(string member, decimal value) => faults.Millimetres($"{at}/{member}Mm", value, zeroAllowed: true);
    }

    /// <summary>The ends; unknown where nothing is said.</summary>
    public static Ends ToEnds(EndsRecord? record, string at, Faults faults) => record is null ? default
        : new(faults.Word<EndState>($"{at}/left", record.Left), faults.Word<EndState>($"{at}/right", record.Right));

    /// <summary>The warp on the wire; null for a flat board.</summary>
    public static WarpRecord? ToRecord(Warp warp) => warp.IsFlat ? null
        : new(warp.Bow.Millimetres, warp.Crook.Millimetres, warp.Cup.Millimetres, warp.Twist.Millimetres);

    /// <summary>The ends on the wire; null where nobody knows either.</summary>
    public static EndsRecord? ToRecord(Ends ends) => ends == default ? null : ToSaid(ends);

    /// <summary>The sides that were estimated; none where nothing is said.</summary>
    public static Estimates ToEstimates(EstimatesRecord? record) => record is null ? default : new(record.Thickness, record.Width, record.Length);

    /// <summary>The estimated sides on the wire; null for none.</summary>
    public static EstimatesRecord? ToRecord(Estimates estimates) =>
        estimates.Any ? new(estimates.Thickness, estimates.Width, estimates.Length) : null;

    /// <summary>The moisture reading; null where none is given.</summary>
    public static MoistureReading? ToMoisture(MoistureRecord? record, string at, Faults faults)
    {
        if (record is null)
        {
            return null;
        }

        var reading = new MoistureReading(record.Percent, record.On);
        if (reading.Fault() is { } fault)
        {
            faults.Add(at, fault);
        }

        return reading;
    }

    /// <summary>The ends on the wire, said even where nobody knows them.</summary>
    public static EndsRecord ToSaid(Ends ends) => new(Words.Of(ends.Left), Words.Of(ends.Right));
}
