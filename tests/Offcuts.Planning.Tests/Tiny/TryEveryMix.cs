namespace Offcuts.Planning.Tests.Tiny;

/// <summary>
/// The least money of a tiny shop that glues up two panels: everything that boards can give to them, in half centimetres. As all sizes are whole and
/// no rip holds more than two strips end to end, widths between the halves give nothing more. Shares no code with the planner.
/// </summary>
internal sealed class TryEveryMix(TinyTwoPanels tiny)
{
    private const int Never = int.MaxValue / 4;

    /// <summary>Steps of a centimetre.</summary>
    private const int Fine = 2;
    private readonly int first = tiny.Panels[0].Need * Fine;
    private readonly int second = tiny.Panels[1].Need * Fine;

    /// <summary>The least money; null if the boards do not suffice.</summary>
    public int? LeastMoney()
    {
        var least = new Dictionary<(int, int), int> { [(0, 0)] = 0 };
        var most = tiny.Panels.Sum(panel => (panel.Need + tiny.Narrowest - 1) / tiny.Narrowest);
        foreach (var board in tiny.Boards)
        {
            var gives = OfBoard(board.Sizes[0].Length, board.Sizes[0].Width);
            for (var copy = 0; copy < Math.Min(board.Available, most) && gives.Count > 0; copy++)
            {
                foreach (var (made, money) in least.ToList())
                {
                    foreach (var more in gives)
                    {
                        var sum = Within(made, more);
                        least[sum] = Math.Min(least.GetValueOrDefault(sum, Never), money + board.Sizes[0].Price);
                    }
                }
            }
        }

        return least.TryGetValue((first, second), out var found) ? found : null;
    }

    private (int, int) Within((int First, int Second) made, (int First, int Second) more) =>
        (Math.Min(first, made.First + more.First), Math.Min(second, made.Second + more.Second));

    /// <summary>Pairs of net widths that a board gives, cut across first or ripped first.</summary>
    private HashSet<(int First, int Second)> OfBoard(int length, int width)
    {
        HashSet<(int, int)> board = [(0, 0)];
        foreach (var along in tiny.Panels.Select(panel => panel.Along).Distinct())
        {
            AddSections(board, length, width, along, []);
        }

        board.UnionWith(Across(width, (length + tiny.Kerf) / (tiny.Panels[0].Along + tiny.Kerf), (length + tiny.Kerf) / (tiny.Panels[1].Along + tiny.Kerf)));
        board.Remove((0, 0));
        return board;
    }

    /// <summary>Sections as long as the strips of one panel or the other, each ripped on its own.</summary>
    private void AddSections(HashSet<(int, int)> board, int length, int width, int along, HashSet<(int, int)> before)
    {
        if (length < along)
        {
            return;
        }

        var section = Across(width, tiny.Panels[0].Along <= along ? 1 : 0, tiny.Panels[1].Along <= along ? 1 : 0);
        HashSet<(int, int)> now = before.Count == 0 ? section : [.. before.SelectMany(_ => section, Within)];
        board.UnionWith(now);
        foreach (var next in tiny.Panels.Select(panel => panel.Along).Distinct())
        {
            AddSections(board, length - along - tiny.Kerf, width, next, now);
        }
    }

    /// <summary>Strips side by side on a width, of each panel so many end to end in every rip.</summary>
    private HashSet<(int, int)> Across(int width, int firstTimes, int secondTimes)
    {
        HashSet<(int, int)> gives = [];
        for (var one = 0; one <= (firstTimes > 0 ? width : 0); one++)
        {
            for (var other = 0; one + other <= width && other <= (secondTimes > 0 ? width : 0); other++)
            {
                var net = Fine * (width + tiny.Kerf - ((one + other) * (tiny.Edge + tiny.Kerf)));
                for (var a = Fine * one * tiny.Narrowest; a <= Fine * one * tiny.Widest; a++)
                {
                    var b = Math.Min(net - a, Fine * other * tiny.Widest);
                    if (b >= Fine * other * tiny.Narrowest && one + other > 0)
                    {
                        gives.Add((Math.Min(first, a * firstTimes), Math.Min(second, b * secondTimes)));
                    }
                }
            }
        }

        return gives;
    }
}
