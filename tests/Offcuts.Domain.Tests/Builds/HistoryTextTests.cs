using Xunit;

namespace Offcuts.Domain.Tests;

public class HistoryTextTests
{
    private static readonly HistoryText Text = new(DisplayUnit.Inch, SpeciesCatalogue.Default.NameOf);

    private static readonly Board Guessed = new()
    {
        Id = "K7M",
        Species = "white-ash",
        Size = new(Length.FromInches(0, 3, 4), Length.FromInches(5, 1, 2), Length.FromInches(36)),
        Estimates = new Estimates(Length: true),
        LoggedAt = default,
    };

    [Fact]
    public void A_size_that_was_only_estimated_is_called_so() => Assert.Equal("white ash, 3/4 x 5 1/2 x about 36 in", Text.Logged(Guessed));

    [Fact]
    public void A_size_that_is_measured_later_has_changed_even_if_the_guess_was_right() =>
        Assert.Equal("size: 3/4 x 5 1/2 x about 36 in -> 3/4 x 5 1/2 x 36 in", Text.Edited(Guessed, Guessed with { Estimates = default }));
}
