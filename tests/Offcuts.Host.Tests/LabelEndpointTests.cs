using System.Net;

namespace Offcuts.Host.Tests;

public sealed class LabelEndpointTests : OwnService
{
    [Fact]
    public async Task Labels_are_drawn_for_every_piece_that_is_there()
    {
        await Service.SendAsync("POST", "/v1/board-lines", """{"text":"3 @ 3/4 x 5 1/2 x ~36 ash, rack 2\n4/4 x 7 x 62 walnut, rack 3"}""");
        await Service.SendAsync("POST", "/v1/boards", """{"species":"cherry","thicknessMm":20,"widthMm":100,"lengthMm":500,"status":"gone"}""");

        var page = await Service.Client.GetStringAsync("/v1/board-labels");
        Assert.Equal(4, page.Split("class=\"label\"").Length - 1);
        Assert.Contains("3/4 x 5 1/2 x about 36 in", page, StringComparison.Ordinal);
        var sheet = await Service.Client.GetAsync("/v1/board-labels/1?place=rack%203&stock=a4-3x8");
        Assert.Equal("image/svg+xml", sheet.Content.Headers.ContentType!.MediaType);
        Assert.Equal(1, (await sheet.Content.ReadAsStringAsync()).Split("class=\"label\"").Length - 1);
    }

    [Theory]
    [InlineData("?stock=letter", 400, "There is no label stock 'letter'")]
    [InlineData("?skip=30", 400, "0 to 29")]
    [InlineData("?ids=K7A", 404, "There is no board 'K7A'")]
    [InlineData("", 400, "No board is chosen")]
    [InlineData("/2", 400, "No board is chosen")]
    [InlineData("/x", 404, "is no sheet's number")]
    [InlineData("?colour=red", 400, "There is no such parameter")]
    public async Task What_cannot_be_drawn_is_told(string query, int status, string says)
    {
        var answer = await Service.SendAsync("GET", $"/v1/board-labels{query}");
        Assert.Equal((HttpStatusCode)status, answer.StatusCode);
        Assert.Contains(says, await answer.Content.ReadAsStringAsync().ContinueWith(text => text.Result.Replace("\\u0027", "'", StringComparison.Ordinal), TaskScheduler.Default), StringComparison.Ordinal);
    }
}
