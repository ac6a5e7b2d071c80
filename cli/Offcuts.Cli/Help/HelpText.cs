using System.CommandLine;
using Offcuts.Cli.Commands;

namespace Offcuts.Cli.Help;

/// <summary>Help that leads with examples.</summary>
internal static class HelpText
{
    /// <summary>The command line up to a command: <c>offcuts boards add</c>.</summary>
    public static string PathOf(Command command)
    {
        var above = command.Parents.OfType<Command>().FirstOrDefault();
        return above is null ? "offcuts" : $"{PathOf(above)} {command.Name}";
    }

    /// <summary>A command's own options and those that every command takes.</summary>
    public static IEnumerable<Option> OptionsOf(Command command) =>
        command.Options.Concat(Globals.All.Where(option => option.Recursive)).Where(option => !option.Hidden).Distinct();

    /// <summary>Writes the help of a command.</summary>
    public static void Write(Command command, Terminal terminal, TextWriter to)
    {
        Heading("Usage");
        to.WriteLine($"  {Usage(command)}\n\n{command.Description}");
        if (command is Verb { Examples: [_, ..] examples })
        {
            to.WriteLine();
            Heading("Examples");
            foreach (var example in examples)
            {
                to.WriteLine($"  {example}");
            }
        }

        var own = command.Options.Where(option => !option.Hidden && !Globals.All.Contains(option)).ToList();
        Section("Commands", command.Subcommands.Where(verb => !verb.Hidden).Select(verb => (verb.Name, verb.Description)));
        Section("Arguments", command.Arguments.Select(argument => (Placeholder(argument), argument.Description)));
        Section("Options", own.Select(option => (Label(option), option.Description)));
        Section("Options of every command", Globals.All.Where(option => option.Recursive || command.Options.Contains(option))
            .Select(option => (Label(option), option.Description)));

        void Heading(string text) => to.WriteLine(ReferenceEquals(to, terminal.Out) ? terminal.Bold(text) : text);

        void Section(string title, IEnumerable<(string Label, string? Text)> rows)
        {
            var lines = rows.ToList();
            if (lines.Count == 0)
            {
                return;
            }

            to.WriteLine();
            Heading(title);
            var width = lines.Max(line => line.Label.Length);
            foreach (var (label, text) in lines)
            {
                to.WriteLine($"  {label.PadRight(width)}  {text}".TrimEnd());
            }
        }
    }

    private static string Usage(Command command)
    {
        var words = new List<string> { PathOf(command) };
        if (command.Subcommands.Count > 0)
        {
            words.Add("COMMAND");
        }

        words.AddRange(command.Arguments.Select(argument =>
            argument.Arity.MinimumNumberOfValues == 0 ? $"[{Placeholder(argument)}]" : Placeholder(argument)));
        words.Add("[OPTIONS]");
        return string.Join(' ', words);
    }

    private static string Placeholder(Argument argument) =>
        argument.Arity.MaximumNumberOfValues > 1 ? $"{argument.Name}..." : argument.Name;

    private static string Label(Option option)
    {
        var names = string.Join(", ", option.Aliases.Append(option.Name).OrderBy(name => name.Length));
        return option.ValueType == typeof(bool) ? names : $"{names} {option.HelpName ?? "VALUE"}";
    }
}
