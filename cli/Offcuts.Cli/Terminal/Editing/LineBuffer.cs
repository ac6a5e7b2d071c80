namespace Offcuts.Cli.Editing;

/// <summary>A line that is being typed, and those typed before it. Knows keys, but no screen.</summary>
internal sealed class LineBuffer
{
    private readonly List<string> history = [];
    private int recalled;
    private string unfinished = "";

    /// <summary>What is typed so far.</summary>
    public string Text { get; private set; } = "";

    /// <summary>Where the next sign goes, from 0.</summary>
    public int Cursor { get; private set; }

    /// <summary>What a key does.</summary>
    public LineEnd Press(ConsoleKeyInfo key)
    {
        var isControl = key.Modifiers.HasFlag(ConsoleModifiers.Control);
        switch (key.Key)
        {
            case ConsoleKey.Enter:
                return LineEnd.Entered;
            case ConsoleKey.C when isControl:
                return LineEnd.Closed;
            case ConsoleKey.D when isControl && Text.Length == 0:
                return LineEnd.Closed;
            case ConsoleKey.D when isControl:
            case ConsoleKey.Delete:
                Cut(Cursor, Math.Min(Cursor + 1, Text.Length));
                break;
            case ConsoleKey.Backspace:
                Cut(Math.Max(0, Cursor - 1), Cursor);
                break;
            case ConsoleKey.U when isControl:
                Cut(0, Cursor);
                break;
            case ConsoleKey.K when isControl:
                Cut(Cursor, Text.Length);
                break;
            case ConsoleKey.W when isControl:
                Cut(WordStart(), Cursor);
                break;
            case ConsoleKey.LeftArrow:
                Cursor = Math.Max(0, Cursor - 1);
                break;
            case ConsoleKey.RightArrow:
                Cursor = Math.Min(Text.Length, Cursor + 1);
                break;
            case ConsoleKey.Home:
            case ConsoleKey.A when isControl:
                Cursor = 0;
                break;
            case ConsoleKey.End:
            case ConsoleKey.E when isControl:
                Cursor = Text.Length;
                break;
            case ConsoleKey.UpArrow:
                Recall(recalled - 1);
                break;
            case ConsoleKey.DownArrow:
                Recall(recalled + 1);
                break;
            default:
                Insert(key.KeyChar);
                break;
        }

        return LineEnd.None;
    }

    /// <summary>Takes the line and begins an empty one.</summary>
    public string Take()
    {
        var line = Text;
        if (line.Length > 0 && (history.Count == 0 || history[^1] != line))
        {
            history.Add(line);
        }

        (recalled, unfinished) = (history.Count, "");
        Set("");
        return line;
    }

    private void Insert(char sign)
    {
        if (!char.IsControl(sign))
        {
            Text = Text.Insert(Cursor, sign.ToString());
            Cursor++;
        }
    }

    private void Cut(int from, int to)
    {
        Text = Text.Remove(from, to - from);
        Cursor = from;
    }

    private void Recall(int which)
    {
        if (which < 0 || which > history.Count)
        {
            return;
        }

        if (recalled == history.Count)
        {
            unfinished = Text;
        }

        recalled = which;
        Set(which == history.Count ? unfinished : history[which]);
    }

    private void Set(string text) => (Text, Cursor) = (text, text.Length);

    private int WordStart()
    {
        var at = Cursor;
        while (at > 0 && Text[at - 1] == ' ')
        {
            at--;
        }

        while (at > 0 && Text[at - 1] != ' ')
        {
            at--;
        }

        return at;
    }
}

/// <summary>What a key meant for the line.</summary>
internal enum LineEnd
{
    /// <summary>It goes on.</summary>
    None,

    /// <summary>It is finished.</summary>
    Entered,

    /// <summary>No more lines are wanted.</summary>
    Closed,
}
