using Offcuts.Cli.Editing;

namespace Offcuts.Cli.Tests;

public class LineBufferTests
{
    [Fact]
    public void Signs_go_in_where_the_cursor_is()
    {
        var line = Typed("ash", ConsoleKey.Home, "4/4 ", ConsoleKey.End, " x", ConsoleKey.LeftArrow, ConsoleKey.Backspace);
        Assert.Equal(("4/4 ashx", 7), (line.Text, line.Cursor));
    }

    [Fact]
    public void Words_and_halves_are_cut()
    {
        var line = Typed("4/4 x 7 walnut");
        line.Press(Control(ConsoleKey.W));
        Assert.Equal("4/4 x 7 ", line.Text);
        line.Press(Control(ConsoleKey.A));
        line.Press(new ConsoleKeyInfo('\0', ConsoleKey.Delete, false, false, false));
        line.Press(Control(ConsoleKey.K));
        Assert.Equal("", line.Text);
        line.Press(Control(ConsoleKey.U));
        Assert.Equal(LineEnd.Closed, line.Press(Control(ConsoleKey.D)));
    }

    [Fact]
    public void The_arrows_walk_through_what_was_typed_before_and_back_to_what_is_not_finished()
    {
        var line = Typed("one");
        line.Take();
        Type(line, "two");
        line.Take();
        Type(line, "thr", ConsoleKey.UpArrow, ConsoleKey.UpArrow, ConsoleKey.UpArrow);
        Assert.Equal("one", line.Text);
        Type(line, ConsoleKey.DownArrow, ConsoleKey.DownArrow, ConsoleKey.DownArrow);
        Assert.Equal("thr", line.Text);
        Assert.Equal(LineEnd.Entered, line.Press(new ConsoleKeyInfo('\r', ConsoleKey.Enter, false, false, false)));
    }

    [Fact]
    public void Keys_at_the_ends_do_nothing()
    {
        var line = Typed(ConsoleKey.LeftArrow, ConsoleKey.Backspace, ConsoleKey.Delete, ConsoleKey.UpArrow, ConsoleKey.DownArrow, ConsoleKey.RightArrow, ConsoleKey.Escape);
        Assert.Equal(("", 0), (line.Text, line.Cursor));
    }

    private static LineBuffer Typed(params object[] keys)
    {
        var line = new LineBuffer();
        Type(line, keys);
        return line;
    }

    private static void Type(LineBuffer line, params object[] keys)
    {
        foreach (var key in keys)
        {
            if (key is ConsoleKey named)
            {
                line.Press(new ConsoleKeyInfo('\0', named, false, false, false));
                continue;
            }

            foreach (var sign in (string)key)
            {
                line.Press(new ConsoleKeyInfo(sign, ConsoleKey.None, false, false, false));
            }
        }
    }

    private static ConsoleKeyInfo Control(ConsoleKey key) => new('\0', key, false, false, true);
}
