using System.CommandLine;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>How long a command may search: <c>--budget</c>, always a time.</summary>
internal sealed class BudgetOption : Option<string>
{
    private readonly string usual;
    private readonly string most;

    /// <param name="usual">The time if it is left out.</param>
    /// <param name="purpose">What it is for.</param>
    /// <param name="most">The most that may be given.</param>
    public BudgetOption(string usual, string purpose = "Time to search", string most = SearchOptions.MostOfRuns)
        : base("--budget")
    {
        (this.usual, this.most) = (usual, most);
        Description = $"{purpose}, for instance 10s or 500ms, at most {most} ({usual} if left out)";
        HelpName = "TIME";
    }

    /// <summary>The time that was given.</summary>
    /// <exception cref="CliException">It is no time, or too long.</exception>
    public int Milliseconds(Run run)
    {
        var written = run.Get(this) ?? usual;
        var time = Duration.Milliseconds(written, Name);
        return time <= Duration.Milliseconds(most, Name) ? time : throw CliException.Invalid($"{Name}: '{written}' is too long. Give at most {most}.");
    }
}
