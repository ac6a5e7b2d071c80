using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands;

/// <summary>One run of a command: what was asked, and what it may use. The connection is opened when first used.</summary>
internal sealed class Run(ParseResult parsed, Terminal terminal, Signals signals) : IAsyncDisposable
{
    private Connection? connection;
    private ShopRecord? shop;
    private ConnectionChoice? store;
    private DirectoryInfo? empty;

    /// <summary>That an empty store answered because there is none where it was sought; null where there is one.</summary>
    public string? NoStore { get; private set; }

    /// <summary>Where to speak.</summary>
    public Terminal Terminal { get; } = terminal;

    /// <summary>Cancelled by Ctrl-C and SIGTERM.</summary>
    public CancellationToken Cancellation => signals.Token;

    /// <summary>The tree of commands.</summary>
    public Command Root => parsed.RootCommandResult.Command;

    /// <summary>The exit code of the signal that cancelled; that of Ctrl-C before there was one.</summary>
    public int ExitCodeOfSignal => signals.ExitedBy ?? ExitCode.Interrupted;

    /// <summary>Whether JSON was asked for.</summary>
    public bool Json => Get(Globals.Json);

    /// <summary>Which server is used and why.</summary>
    public ConnectionChoice Choice => store ?? ConnectionChoice.Make(Get(Globals.Server), Get(Globals.Data), Environment.GetEnvironmentVariable);

    /// <summary>Uses a store whatever is configured; before the first connection.</summary>
    public void UseStore(ConnectionChoice own) => store = own;

    /// <summary>Whether any of these options is on the command line.</summary>
    public bool IsAnyGiven(IEnumerable<Symbol> options) => options.OfType<Option>().Any(option => parsed.GetResult(option) is { Implicit: false });

    /// <summary>The value of an option.</summary>
    public T? Get<T>(Option<T> option) => parsed.GetValue(option);

    /// <summary>The value of an argument.</summary>
    public T Get<T>(Argument<T> argument) => parsed.GetRequiredValue(argument);

    /// <summary>The value of an argument that may be left out.</summary>
    public T? Find<T>(Argument<T> argument) => parsed.GetValue(argument);

    /// <summary>The API.</summary>
    public async Task<IOffcutsApi> ConnectAsync()
    {
        connection ??= await Connection.OpenAsync(Opened(Choice), Cancellation);
        return connection.Api;
    }

    // Whoever only asks, perhaps with a slip in the folder's name, is answered from an empty store that is gone afterwards.
    private ConnectionChoice Opened(ConnectionChoice choice)
    {
        if (choice.DatabasePath is not { } path || File.Exists(path) || (parsed.CommandResult.Command is Verb verb && verb.BeginsStore(this)))
        {
            return choice;
        }

        var folder = Path.GetDirectoryName(path)!;
        if (File.Exists(folder))
        {
            // Opening it says what is wrong.
            return choice;
        }

        NoStore = $"There is no store in {folder}, and asking makes none: this is what an empty one says. Begin one with 'offcuts boards log', or see 'offcuts demo --help' for one to try.";
        empty = Directory.CreateTempSubdirectory("offcuts-empty-");
        return choice with { DatabasePath = Path.Combine(empty.FullName, Path.GetFileName(path)) };
    }

    /// <summary>The unit in which this shop reads and writes sizes.</summary>
    public async Task<DisplayUnit> UnitAsync() =>
        (await ShopAsync()).Unit == "millimetre" ? DisplayUnit.Millimetre : DisplayUnit.Inch;

    /// <summary>How the shop works; asked for once.</summary>
    public async Task<ShopRecord> ShopAsync() => shop ??= await (await ConnectAsync()).GetShopAsync(Cancellation);

    /// <summary>Writes the wire's JSON to standard output.</summary>
    public void WriteJson<T>(T value, JsonTypeInfo<T> type)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true }))
        {
            JsonSerializer.Serialize(writer, value, type);
        }

        Terminal.Out.WriteLine(System.Text.Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length));
    }

    /// <summary>Writes the wire's JSON of a command that takes several ids: an object for one id, an array for several, in their order.</summary>
    /// <param name="values">What there is to tell: of a failure on the way, what was done before.</param>
    /// <param name="asked">How many ids were given.</param>
    /// <param name="one">Writes one.</param>
    /// <param name="several">Writes several.</param>
    public void WriteJson<T>(List<T> values, int asked, JsonTypeInfo<T> one, JsonTypeInfo<List<T>> several)
    {
        if (asked == 1)
        {
            WriteJson(values[0], one);
        }
        else
        {
            WriteJson(values, several);
        }
    }

    /// <summary>A message on standard error, unless the user wants none.</summary>
    public void Say(string message)
    {
        if (!Get(Globals.Quiet))
        {
            Terminal.Say(SafeText.Of(message));
        }
    }

    /// <summary>Asks before something that cannot be undone.</summary>
    /// <param name="question">For instance <c>Remove board K7M?</c></param>
    /// <param name="yes">The option that answers beforehand.</param>
    /// <exception cref="CliException">Nobody can be asked and the option is missing.</exception>
    public bool Confirm(string question, Option<bool> yes)
    {
        if (Get(yes))
        {
            return true;
        }

        if (!Terminal.InIsTerminal || Get(Globals.NoInput))
        {
            throw CliException.Usage($"{question} Nobody can be asked here: give {yes.Name} to say so. Nothing was changed.");
        }

        Terminal.Err.Write($"{SafeText.Of(question)} [y/N] ");
        var answer = Terminal.In.ReadLine()?.Trim();
        return answer is not null && (answer.Equals("y", StringComparison.OrdinalIgnoreCase) || answer.Equals("yes", StringComparison.OrdinalIgnoreCase));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (connection is not null)
        {
            await connection.DisposeAsync();
        }

        empty?.Delete(recursive: true);
    }
}
