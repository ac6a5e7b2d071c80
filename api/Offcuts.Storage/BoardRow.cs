using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>A row of <c>boards</c>.</summary>
internal sealed class BoardRow
{
    private const string Day = "yyyy-MM-dd";

    public long Sequence { get; init; }

    public string Id { get; init; } = "";

    public string Kind { get; init; } = "";

    public string Species { get; init; } = "";

    public long ThicknessTicks { get; init; }

    public long WidthTicks { get; init; }

    public long LengthTicks { get; init; }

    public int Quantity { get; init; }

    public string Surface { get; init; } = "";

    public string Appearance { get; init; } = "";

    public string? Batch { get; init; }

    public string LeftEnd { get; init; } = "";

    public string RightEnd { get; init; } = "";

    public long BowTicks { get; init; }

    public long CrookTicks { get; init; }

    public long CupTicks { get; init; }

    public long TwistTicks { get; init; }

    public bool ThicknessEstimated { get; init; }

    public bool WidthEstimated { get; init; }

    public bool LengthEstimated { get; init; }

    public long? MoistureTenths { get; init; }

    public string? MoistureOn { get; init; }

    public string? Place { get; init; }

    public string? Source { get; init; }

    public string? Note { get; init; }

    public string Status { get; init; } = "";

    public string LoggedAt { get; init; } = "";

    public string? OriginPlan { get; init; }

    public string? CutFrom { get; init; }

    public long? PriceMinorUnits { get; init; }

    public string? PriceCurrency { get; init; }

    public static BoardRow Of(Board board, long sequence) => new()
    {
        Sequence = sequence,
        Id = board.Id,
        Kind = Words.Of(board.Kind),
        Species = board.Species,
        ThicknessTicks = board.Size.Thickness.Ticks,
        WidthTicks = board.Size.Width.Ticks,
        LengthTicks = board.Size.Length.Ticks,
        Quantity = board.Quantity,
        Surface = Words.Of(board.Surface),
        Appearance = Words.Of(board.Appearance),
        Batch = board.Batch,
        LeftEnd = Words.Of(board.Ends.Left),
        RightEnd = Words.Of(board.Ends.Right),
        BowTicks = board.Warp.Bow.Ticks,
        CrookTicks = board.Warp.Crook.Ticks,
        CupTicks = board.Warp.Cup.Ticks,
        TwistTicks = board.Warp.Twist.Ticks,
        ThicknessEstimated = board.Estimates.Thickness,
        WidthEstimated = board.Estimates.Width,
        LengthEstimated = board.Estimates.Length,
        MoistureTenths = board.Moisture is { } reading ? (long)(reading.Percent * 10) : null,
        MoistureOn = board.Moisture?.On?.ToString(Day, CultureInfo.InvariantCulture),
        Place = board.Place,
        Source = board.Source,
        Note = board.Note,
        Status = Words.Of(board.Status),
        LoggedAt = Stamp.Of(board.LoggedAt),
        OriginPlan = board.Origin?.PlanId,
        CutFrom = board.Origin?.CutFrom,
        PriceMinorUnits = board.Price?.Amount.MinorUnits,
        PriceCurrency = board.Price?.Currency,
    };

    public Board ToBoard(IEnumerable<DefectRow> defects, IEnumerable<HoldRow> holds) => new()
    {
        Id = Id,
        Kind = Words.Read<BoardKind>(Kind),
        Species = Species,
        Size = new(Length.FromTicks(ThicknessTicks), Length.FromTicks(WidthTicks), Length.FromTicks(LengthTicks)),
        Quantity = Quantity,
        Surface = Words.Read<Surface>(Surface),
        Appearance = Words.Read<Appearance>(Appearance),
        Batch = Batch,
        Ends = new(Words.Read<EndState>(LeftEnd), Words.Read<EndState>(RightEnd)),
        Warp = new(Length.FromTicks(BowTicks), Length.FromTicks(CrookTicks), Length.FromTicks(CupTicks), Length.FromTicks(TwistTicks)),
        Estimates = new(ThicknessEstimated, WidthEstimated, LengthEstimated),
        Moisture = MoistureTenths is { } tenths ? new MoistureReading(tenths / 10m, DateOnly.ParseExact(MoistureOn!, Day, CultureInfo.InvariantCulture)) : null,
        Place = Place,
        Source = Source,
        Note = Note,
        Status = Words.Read<BoardStatus>(Status),
        LoggedAt = Stamp.Read(LoggedAt),
        Defects = [.. defects.Select(defect => defect.ToDefect())],
        Holds = [.. holds.Select(hold => new Hold(hold.PlanId, hold.Number))],
        Origin = OriginPlan is { } plan ? new Origin(plan, CutFrom) : null,
        Price = PriceMinorUnits is { } amount ? new BoardPrice(new Money(amount), PriceCurrency!) : null,
    };
}

/// <summary>A row of <c>reservations</c>: the boards alike are numbered anew whenever one is written.</summary>
internal sealed class HoldRow
{
    public long BoardSequence { get; init; }

    public int Copy { get; init; }

    public string PlanId { get; init; } = "";

    public int Number { get; init; }
}

/// <summary>A row of <c>board_defects</c>.</summary>
internal sealed class DefectRow
{
    public long BoardSequence { get; init; }

    public int Ordinal { get; init; }

    public string Kind { get; init; } = "";

    public long XTicks { get; init; }

    public long YTicks { get; init; }

    public long LengthTicks { get; init; }

    public long WidthTicks { get; init; }

    public static DefectRow Of(Defect defect, long board, int ordinal) => new()
    {
        BoardSequence = board,
        Ordinal = ordinal,
        Kind = defect.Kind,
        XTicks = defect.Area.X.Ticks,
        YTicks = defect.Area.Y.Ticks,
        LengthTicks = defect.Area.Length.Ticks,
        WidthTicks = defect.Area.Width.Ticks,
    };

    public Defect ToDefect() => new(Kind, new Rect(
        Length.FromTicks(XTicks), Length.FromTicks(YTicks), Length.FromTicks(LengthTicks), Length.FromTicks(WidthTicks)));
}
