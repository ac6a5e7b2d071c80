using System.CommandLine;

namespace Offcuts.Cli.Commands;

/// <summary>A command with examples and what it does. Only the parser of System.CommandLine is used: its own way of running writes help and suggestions to standard output and ends with 1 for a wrong command line.</summary>
internal sealed class Verb : Command
{
    /// <summary>A verb, or a noun that only holds verbs.</summary>
    /// <param name="name">Name.</param>
    /// <param name="description">One sentence; the first line stands in lists.</param>
    /// <param name="examples">Command lines that work as they stand.</param>
    public Verb(string name, string description, params string[] examples)
        : base(name, description) => Examples = examples;

    /// <summary>Command lines that work as they stand.</summary>
    public IReadOnlyList<string> Examples { get; }

    /// <summary>What it does; null for a noun.</summary>
    public Func<Run, Task<int>>? Work { get; private set; }

    /// <summary>Whether it makes the store where there is none, because it has something to put into it.</summary>
    public Func<Run, bool> BeginsStore { get; private set; } = _ => false;

    /// <summary>Adds arguments, options and verbs.</summary>
    public Verb With(params Symbol[] symbols)
    {
        foreach (var symbol in symbols)
        {
            switch (symbol)
            {
                case Argument argument:
                    Add(argument);
                    break;
                case Option option:
                    Add(option);
                    break;
                default:
                    Add((Command)symbol);
                    break;
            }
        }

        return this;
    }

    /// <summary>Says that it makes the store where there is none.</summary>
    /// <param name="when">When it does; null for always.</param>
    public Verb Begins(Func<Run, bool>? when = null)
    {
        BeginsStore = when ?? (_ => true);
        return this;
    }

    /// <summary>Says what it does.</summary>
    public Verb Does(Func<Run, Task<int>> work)
    {
        Work = work;
        // The parser asks for a verb below a command that has none of its own.
        SetAction(_ => { });
        return this;
    }
}
