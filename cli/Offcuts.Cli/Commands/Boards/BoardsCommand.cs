namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards</c>.</summary>
internal static class BoardsCommand
{
    public static Verb Create() => new Verb(
        "boards",
        "The boards, offcuts and sheets on the rack",
        "offcuts boards add 3/4 x 5 1/2 x 36 --species white-ash --place \"rack 2\"",
        "offcuts boards log 3 @ 3/4 x 5 1/2 x 36 ash, rack 2",
        "offcuts boards list --species white-ash --min-length 30in")
        .With(List.Create(), Totals.Create(), Add.Create(), Log.Create(), Show.Create(), History.Create(), Uses.Create(), Edit.Create(), Remove.Create(), Import.Create(), Export.Create(), Labels.Create());
}
