namespace Offcuts.Cli.Tests;

// Tests that need something of the machine. Where it is missing they are reported as skipped, with the reason, and never as passed.
internal static class Needing
{
    // util-linux's script(1) gives a program a terminal of its own; scripts of the same name elsewhere take other options.
    public const string Script = "/usr/bin/script";

    public static string? Terminal() => OperatingSystem.IsLinux() ? File(Script, "It gives the program a terminal: install util-linux.") : "Only util-linux's script(1) gives the program a terminal.";

    public static string? File(string path, string why) => System.IO.File.Exists(path) ? null : $"{path} is not on this machine. {why}";

    public static string? Unix() => OperatingSystem.IsWindows() ? "It is about what Windows does not have." : null;

    public static string? Linux() => OperatingSystem.IsLinux() ? null : "It looks into /proc, which only Linux has.";
}

internal sealed class TerminalFactAttribute : FactAttribute
{
    public TerminalFactAttribute() => Skip = Needing.Terminal();
}

internal sealed class TerminalTheoryAttribute : TheoryAttribute
{
    public TerminalTheoryAttribute() => Skip = Needing.Terminal();
}

internal sealed class UnixFactAttribute : FactAttribute
{
    public UnixFactAttribute() => Skip = Needing.Unix();
}

internal sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute() => Skip = Needing.Linux();
}

internal sealed class BashTheoryAttribute : TheoryAttribute
{
    public const string Bash = "/bin/bash";

    public BashTheoryAttribute() => Skip = Needing.File(Bash, "The script that is tested is one for it.");
}

public sealed class NeedingTests
{
    [Fact]
    public void What_is_missing_is_named_and_what_is_there_skips_nothing()
    {
        var missing = Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString("N"));
        Assert.Equal($"{missing} is not on this machine. Install it.", Needing.File(missing, "Install it."));
        Assert.Null(Needing.File(Environment.ProcessPath!, "Install it."));
        Assert.Equal(Needing.Terminal(), new TerminalFactAttribute().Skip);
        Assert.Equal(OperatingSystem.IsLinux() && File.Exists(Needing.Script), new TerminalTheoryAttribute().Skip is null);
        Assert.Equal(OperatingSystem.IsWindows(), new UnixFactAttribute().Skip is not null);
    }
}
