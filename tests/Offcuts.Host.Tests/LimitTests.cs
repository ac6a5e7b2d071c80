using System.Net;
using System.Text;

namespace Offcuts.Host.Tests;

// Each limit: at it, and one above it.
public sealed class LimitTests(Service service) : IClassFixture<Service>
{
    private const string Board = """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":900}""";
    private const int MaxBody = 4 * 1024 * 1024;

    [Theory]
    [InlineData(MaxBody, HttpStatusCode.Created)]
    [InlineData(MaxBody + 1, HttpStatusCode.RequestEntityTooLarge)]
    public async Task A_body_may_have_four_mebibytes(int length, HttpStatusCode expected)
    {
        // Whoever sends all at once may find the connection closed before the answer is read (RFC 9110, 15.5.14); whoever asks first is told.
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/boards")
        {
            Content = new StringContent(Board + new string(' ', length - Board.Length), Encoding.UTF8, "application/json"),
        };
        request.Headers.ExpectContinue = true;

        using var answer = await service.Client.SendAsync(request);

        Assert.Equal(expected, answer.StatusCode);
        if (expected != HttpStatusCode.Created)
        {
            Assert.Equal("too-large", (await Service.ProblemAsync(answer)).GetProperty("code").GetString());
        }
    }

    [Theory]
    [InlineData("place", 200)]
    [InlineData("source", 200)]
    [InlineData("note", 2000)]
    public async Task Texts_have_a_longest_length(string member, int longest)
    {
        Assert.Equal(HttpStatusCode.Created, (await SendAsync(longest)).StatusCode);
        var refused = await SendAsync(longest + 1);
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Equal($"#/{member}", await Service.PointerAsync(refused));

        Task<HttpResponseMessage> SendAsync(int length) =>
            service.SendAsync("POST", "/v1/boards", $$"""{{Board[..^1]}},"{{member}}":"{{new string('x', length)}}"}""");
    }

    [Fact]
    public async Task An_import_takes_a_thousand_boards_and_none_of_one_more()
    {
        var before = await CountAsync();
        var refused = await ImportAsync(1001);
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Equal("#/items", await Service.PointerAsync(refused));
        Assert.Equal(before, await CountAsync());
        Assert.Equal(HttpStatusCode.Created, (await ImportAsync(1000)).StatusCode);

        Task<HttpResponseMessage> ImportAsync(int count) =>
            service.SendAsync("POST", "/v1/board-imports", $$"""{"items":[{{string.Join(',', Enumerable.Repeat(Board, count))}}]}""");

        async Task<int> CountAsync() => (await service.GetAsync("/v1/boards?limit=500")).GetProperty("items").GetArrayLength();
    }
}
