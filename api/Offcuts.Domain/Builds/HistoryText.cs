using System.Globalization;

namespace Offcuts.Domain;

/// <summary>What a line of the journal did to one board, in words, with sizes in the shop's unit.</summary>
/// <param name="unit">The shop's unit.</param>
/// <param name="nameOf">The name of a species by its id.</param>
public sealed class HistoryText(DisplayUnit unit, Func<string, string> nameOf)
{
    /// <summary>A board that came onto the rack: how many, what it is and how large.</summary>
    public string Logged(Board board)
    {
        var what = $"{nameOf(board.Species)}, {Size(board)}";
        return board.Quantity == 1 ? what : string.Create(CultureInfo.InvariantCulture, $"{board.Quantity} of {what}");
    }

    /// <summary>What an edit changed; each as it was and as it is.</summary>
    public string Edited(Board before, Board after)
    {
        (string Name, string Was, string Is)[] members =
        [
            ("species", nameOf(before.Species), nameOf(after.Species)), ("size", Size(before), Size(after)),
            ("quantity", Text(before.Quantity), Text(after.Quantity)), ("kind", Text(before.Kind), Text(after.Kind)),
            ("surface", Text(before.Surface), Text(after.Surface)), ("appearance", Text(before.Appearance), Text(after.Appearance)),
            ("status", Text(before.Status), Text(after.Status)), ("batch", Text(before.Batch), Text(after.Batch)),
            ("place", Text(before.Place), Text(after.Place)), ("source", Text(before.Source), Text(after.Source)), ("note", Text(before.Note), Text(after.Note)),
        ];
        var changed = members.Where(member => member.Was != member.Is).Select(member => $"{member.Name}: {member.Was} -> {member.Is}").ToList();
        AddIf(before.Warp != after.Warp, "warp");
        AddIf(before.Ends != after.Ends, "ends");
        AddIf(before.Moisture != after.Moisture, after.Moisture is { } reading ? $"moisture {MoistureText.Format(reading)}" : "moisture");
        AddIf(!before.Defects.SequenceEqual(after.Defects), "defects");
        return changed.Count == 0 ? "nothing that shows" : string.Join("; ", changed);

        void AddIf(bool differs, string name)
        {
            if (differs)
            {
                changed.Add($"{name} changed");
            }
        }
    }

    /// <summary>What a cut made of it; for one that was bought then, from whom and for how much.</summary>
    /// <param name="cuts">As often as the line says that it, or one of several alike, was cut.</param>
    /// <param name="after">The board after it.</param>
    public static string Cut(IReadOnlyList<ClosedBoard> cuts, Board after)
    {
        var bought = cuts.Any(cut => cut.IsBought) && after.Price is { } price
            ? $"bought{(after.Source is { } source ? $" from {source}" : "")} for {MoneyText.Format(price.Amount, price.Currency)}, "
            : "";
        return bought + string.Join("; ", cuts.Select(cut =>
            string.Create(CultureInfo.InvariantCulture, $"cut as board {cut.Number} of the plan, ")
            + (cut.Leftovers.Count == 0 ? "nothing left over" : $"left over: {string.Join(", ", cut.Leftovers)}")
            + (cut.Reason is { } reason ? $" ({reason})" : "")));
    }

    private string Size(Board board) => SizeText.Format(board.Size, board.Estimates, unit);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Text<T>(T value)
        where T : struct, Enum => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    private static string Text(string? words) => string.IsNullOrWhiteSpace(words) ? "nothing" : words;
}
