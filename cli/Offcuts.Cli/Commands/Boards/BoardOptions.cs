using System.CommandLine;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>Options that several verbs of <c>boards</c> take.</summary>
internal static class BoardOptions
{
    public static readonly Option<string> Species = new("--species") { Description = "Species, by id or name", HelpName = "SPECIES" };
    public static readonly Option<int?> Quantity = new("--quantity") { Description = "How many alike", HelpName = "COUNT", CustomParser = Values.Whole };
    public static readonly Option<string> Kind = Word("--kind", "What it is", "solid", "sheet");
    public static readonly Option<string> Surface = Word("--surface", "How far it is milled", "rough", "skip-planed", "surfaced");
    public static readonly Option<string> Appearance = Word("--appearance", "What its faces are good for", "clear", "sound-knots", "paint");
    public static readonly Option<string> Status = Word("--status", "Where it is in its life", "free", "reserved", "used", "gone");
    public static readonly Option<string> Batch = new("--batch") { Description = "The same tree or the same lot", HelpName = "TEXT" };
    public static readonly Option<string> Warp = new("--warp") { Description = "How far it is out of flat over the whole board, for instance \"bow 1/4, twist 1/16\"; or flat", HelpName = "WARP" };
    public static readonly Option<string> Ends = new("--ends") { Description = "State of its ends: sound, checked, unknown, or \"left checked, right sound\"", HelpName = "ENDS" };
    public static readonly Option<string> Moisture = new("--moisture") { Description = "Reading of a moisture meter, for instance 8% or \"8.5% on 2026-11-01\"; today's if no day is given; none for none", HelpName = "READING" };
    public static readonly Option<string[]> Defect = new("--defect")
    {
        Description = "What to cut around, for instance \"split 0..4in\", \"knot 10..12 x 1..2\" or \"split 4in at the right end\"; may be given again; none for none",
        HelpName = "DEFECT",
    };

    public static readonly Option<string[]> AddDefect = new("--add-defect") { Description = "One more defect, beside those that are known; may be given again", HelpName = "DEFECT" };
    public static readonly Option<string> Place = new("--place") { Description = "Where it lies", HelpName = "TEXT" };
    public static readonly Option<string> Source = new("--source") { Description = "Where it came from", HelpName = "TEXT" };
    public static readonly Option<string> Note = new("--note") { Description = "Anything else worth remembering", HelpName = "TEXT" };
    public static readonly Option<bool> Yes = new("--yes", "-y") { Description = "Do not ask" };
    public static readonly Option<bool> DryRun = new("--dry-run", "-n") { Description = "Say what would be done, and change nothing" };
    public static readonly Argument<string> Id = new("ID") { Description = "The board's id, as on its end grain" };

    private static Option<string> Word(string name, string what, params string[] words)
    {
        var option = new Option<string>(name) { Description = $"{what}: {string.Join(", ", words)}", HelpName = "WORD" };
        option.CompletionSources.Add(words);
        return option;
    }
}
