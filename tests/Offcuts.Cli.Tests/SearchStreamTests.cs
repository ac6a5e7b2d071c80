using System.CommandLine;
using System.Text;
using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Tests;

public class SearchStreamTests
{
    // The event is written out as the service's documentation has it.
    private const string Fault = """
        event: fault
        data: {"type":"/problems/invalid","title":"The request cannot be right","status":400,"detail":"See errors.","code":"invalid","errors":[{"pointer":"#/parameter","detail":"There is no parameter 'lenght': did you mean length?"}],"traceId":"1"}


        """;

    [Fact]
    public async Task A_fault_on_the_way_is_told_with_all_that_it_names()
    {
        var failure = await Assert.ThrowsAsync<ProblemException>(() => SearchStream.AnswerAsync(
            Task.FromResult<Stream>(new MemoryStream(Encoding.UTF8.GetBytes(Fault))), ClientJson.Default.StretchProgressRecord, ClientJson.Default.StretchRecord, _ => { }, CancellationToken.None));
        using var signals = new Signals();
        var told = FaultReport.Of(failure, signals, new Command("stretch"));

        Assert.Equal(("invalid", ExitCode.Usage), (told.Code, told.ExitCode));
        Assert.Contains("There is no parameter 'lenght': did you mean length?", told.Message, StringComparison.Ordinal);
    }
}
