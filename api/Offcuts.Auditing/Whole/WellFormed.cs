using Offcuts.Domain;

namespace Offcuts.Auditing.Whole;

/// <summary>
/// Nothing that must be there is null, and every length lies within what the product takes. The other rules rely on it: after it no
/// arithmetic on a plan's lengths overflows.
/// </summary>
internal static class WellFormed
{
    public static void Check(Plan plan, Findings findings)
    {
        if (plan.Boards is null || plan.GlueUps is null || plan.Laminations is null || plan.Purchases is null || plan.Missing is null || plan.Counts is null || plan.Charges is null
            || plan.Run is null)
        {
            findings.Add(AuditRule.WellFormed, $"A list of the plan or the record of its run is not there.");
            return;
        }

        findings.Require(Enum.IsDefined(plan.Status), AuditRule.WellFormed, $"There is no status {(int)plan.Status}.");
        foreach (var (index, board) in plan.Boards.Index())
        {
            findings.Require(IsSound(board), AuditRule.WellFormed, $"Board {index + 1} of the list lacks something or has a size beyond all limits.");
        }

        foreach (var (index, glueUp) in plan.GlueUps.Index())
        {
            findings.Require(IsSound(glueUp), AuditRule.WellFormed, $"Glue-up {index + 1} of the list lacks something or has a size beyond all limits.");
        }

        findings.Require(
            plan.Laminations.All(lamination => lamination is { Part: not null, Species: not null, Layers: not null } && lamination.Layers.All(layer => layer is not null)),
            AuditRule.WellFormed, $"A list of layers lacks something.");

        findings.Require(
            plan.Charges.All(charge => charge is { Supplier: not null } && IsAmount(charge.Delivery) && IsAmount(charge.TopUp)) && IsAmount(plan.StopCost),
            AuditRule.WellFormed, $"A charge names no supplier or is beyond all limits.");

        foreach (var (index, purchase) in plan.Purchases.Index())
        {
            findings.Require(
                purchase?.Offer?.Offer?.Id is not null, AuditRule.WellFormed, $"Purchase {index + 1} of the list does not say what is bought.");
        }

        foreach (var (index, count) in plan.Counts.Index())
        {
            findings.Require(
                count?.Part is not null && (count.Gaps is null || IsPlace(count.Gaps.Total)),
                AuditRule.WellFormed, $"Count {index + 1} of the list has no name or gaps beyond all limits.");
        }

        foreach (var (index, missing) in plan.Missing.Index())
        {
            findings.Require(
                missing?.Name is not null && Enum.IsDefined(missing.Reason),
                AuditRule.WellFormed, $"Missing part {index + 1} of the list has no name or no known reason.");
        }
    }

    private static bool IsAmount(Money money) => money.MinorUnits is >= -MoneyText.MaxMinorUnits and <= MoneyText.MaxMinorUnits * Limits.MaxEntries;

    private static bool IsSound(BoardCut? board) =>
        board is { Species: not null, Defects: not null, Pieces: not null, Cuts: not null }
        && Enum.IsDefined(board.Kind) && Enum.IsDefined(board.Surface) && Enum.IsDefined(board.FirstCut)
        && IsSize(board.Size.Thickness) && IsSize(board.Size.Width) && IsSize(board.Size.Length)
        && board.Defects.All(defect => defect is not null && IsSound(defect.Area))
        && board.Pieces.All(IsSound)
        && board.Cuts.All(cut => cut is not null && Enum.IsDefined(cut.Direction) && IsSound(cut.Kerf));

    private static bool IsSound(Piece? piece) => piece is not null && IsSound(piece.At)
        && (piece.Loss is not { } loss || (IsPlace(loss.Thickness) && IsPlace(loss.Width))) && piece switch
        {
            PartPiece part => part is { Part: not null, Copies: not null } && Enum.IsDefined(part.Use) && (part.Finished is not { } size || IsPlace(size)),
            StripPiece strip => strip.Panel is not null && IsPlace(strip.NetWidth),
            LeftoverPiece or WastePiece => true,
            _ => false,
        };

    private static bool IsSound(GlueUp? glueUp) =>
        glueUp is { Panel: not null, Species: not null, SubPanels: not null }
        && glueUp.SubPanels.All(sub => sub is { Strips: not null } && IsPlace(sub.NeededWidth)
            && sub.Strips.All(strip => strip is not null && IsPlace(strip.NetWidth)));

    private static bool IsSound(Rect rect) => IsPlace(rect.X) && IsPlace(rect.Y) && IsPlace(rect.Length) && IsPlace(rect.Width);

    private static bool IsPlace(Dimensions size) => IsPlace(size.Thickness) && IsPlace(size.Width) && IsPlace(size.Length);

    private static bool IsSize(Length length) => length > Length.Zero && length <= Length.Max;

    private static bool IsPlace(Length length) => length.Ticks is >= -Length.MaxTicks and <= Length.MaxTicks;
}
