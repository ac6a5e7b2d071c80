using System.Security.Cryptography;
using System.Text;
using CsCheck;
using Offcuts.Documents.Tables;
using Xunit;

namespace Offcuts.Domain.Tests;

public class BoardTableTests
{
    private static readonly Board Walnut = new()
    {
        Id = "K7A",
        Species = "black-walnut",
        Size = new(Length.FromInches(1), Length.FromInches(6, 3, 4), Length.FromInches(74, 1, 64)),
        Estimates = new Estimates(Length: true),
        Quantity = 3,
        Surface = Surface.SkipPlaned,
        Appearance = Appearance.SoundKnots,
        Ends = new Ends(EndState.Checked, EndState.Sound),
        Warp = new Warp(Length.FromInches(0, 1, 4), default, Length.FromMillimetres(1.5m), default),
        Defects = [new Defect("split", new Rect(Length.Zero, Length.Zero, Length.FromInches(5), Length.FromInches(6, 3, 4))), new Defect("knot #2", new Rect(Length.FromInches(9), Length.FromInches(1), Length.FromInches(1), Length.FromInches(1)))],
        Batch = "log, 3",
        Moisture = new MoistureReading(8.5m, new DateOnly(2026, 3, 1)),
        Place = "rack \"A\"\nlow",
        Source = "=1+1",
        Note = "-",
        LoggedAt = new DateTimeOffset(2026, 3, 14, 15, 9, 26, TimeSpan.Zero),
    };

    [Fact]
    public void New_boards_need_little_and_their_cells_mean_what_makers_write()
    {
        var read = Read("""
            Species,Thickness,width,LENGTH,quantity,unit,place,defects,warp,ends,appearance,surface,logged
            walnut,1,6.75,~74,2,in,rack A,split 0..5in | knot 12..13 x 3..4,"bow 1/4, cup 1/8","left checked, right sound",sound knots,skip-planed,2026-03-14
            birch plywood,18,600,1200,,mm,,,,,,,
            ash,3/4,5 1/2,3ft,,,,,,,,,
            """);

        Assert.Equal(["black-walnut", "birch-plywood", "white-ash"], read.Added.Select(board => board.Species));
        var walnut = read.Added[0];
        Assert.Equal((2, "rack A", Surface.SkipPlaned, Appearance.SoundKnots), (walnut.Quantity, walnut.Place, walnut.Surface, walnut.Appearance));
        Assert.Equal(new Estimates(Length: true), walnut.Estimates);
        Assert.Equal(["split", "knot"], walnut.Defects.Select(defect => defect.Kind));
        Assert.Equal(Length.FromInches(0, 1, 8), walnut.Warp.Cup);
        Assert.Equal((BoardKind.Sheet, Surface.Surfaced, 18m), (read.Added[1].Kind, read.Added[1].Surface, read.Added[1].Size.Thickness.Millimetres));
        Assert.Equal(Length.FromInches(36), read.Added[2].Size.Length);
    }

    [Theory]
    [InlineData("species;thickness;width;length;unit\nash;19,5;140;~900;mm\n")]
    [InlineData("\uFEFFspecies;thickness;width;length;unit\r\nash;19,5;140;~900;mm\r\n")]
    [InlineData("sep=;\r\nspecies;thickness;width;length;unit\r\nash;19,5;140;~900;mm\r\n")]
    [InlineData("species\tthickness\twidth\tlength\tunit\nash\t19.5\t140\t~900\tmm")]
    [InlineData("\"species\",\"thickness\",\"width\",\"length\",\"unit\"\n\"ash\",\"19,5\",\"140\",\"~900\",\"mm\"\n")]
    [InlineData("\n\nspecies,thickness,width,length,unit,,\n\n ash , 19.5 , 140, ~900 ,mm,,\n,,,,,,\n")]
    public void Tables_are_read_however_a_spreadsheet_wrote_them(string text)
    {
        var board = Assert.Single(Read(text).Added);
        Assert.Equal(new Dimensions(Length.FromMillimetres(19.5m), Length.FromMillimetres(140), Length.FromMillimetres(900)), board.Size);
        Assert.Equal(new Estimates(Length: true), board.Estimates);
        // However it was written, it is the same content.
        Assert.Equal(Read("species,thickness,width,length,unit\nash,19.5,140,~900,mm").Mark, Read(text).Mark);
    }

    [Theory]
    [InlineData(',')]
    [InlineData(';')]
    public void What_was_written_and_not_touched_changes_nothing(char separator)
    {
        foreach (var unit in Enum.GetValues<DisplayUnit>())
        {
            var read = Read(BoardTable.Write([Walnut], unit, separator), unit, Walnut);
            Assert.Equal((1, 0, 0), (read.Unchanged, read.Changed.Count, read.Added.Count));
            Assert.Null(read.Mark);
        }
    }

    [Fact]
    public void A_cell_that_was_changed_changes_the_board_and_nothing_else()
    {
        var table = BoardTable.Write([Walnut], DisplayUnit.Inch, ',').Replace("~74.015625", "73.5", StringComparison.Ordinal);
        var (before, after) = Assert.Single(Read(table, DisplayUnit.Inch, Walnut).Changed);
        Assert.Equal(Walnut, before);
        Assert.Equal(Walnut with { Size = Walnut.Size with { Length = Length.FromInches(73, 1, 2) }, Estimates = default }, after);
    }

    [Fact]
    public void A_column_that_is_not_there_and_an_empty_cell_leave_the_board_as_it_is()
    {
        var (_, after) = Assert.Single(Read($"place,id,note\nwall,{Walnut.Id.ToLowerInvariant()},\n", DisplayUnit.Inch, Walnut).Changed);
        Assert.Equal(Walnut with { Place = "wall" }, after);
    }

    [Fact]
    public void A_cell_that_a_spreadsheet_would_run_is_written_as_text_and_read_as_it_was()
    {
        var table = BoardTable.Write([Walnut], DisplayUnit.Inch, ',');
        Assert.Contains(",'=1+1,'-,", table, StringComparison.Ordinal);
        var copied = Assert.Single(Read(table.Replace(Walnut.Id, "", StringComparison.Ordinal).Replace("knot #2", "knot", StringComparison.Ordinal)).Added);
        Assert.Equal((Walnut.Source, Walnut.Note, Walnut.Batch, Walnut.Place), (copied.Source, copied.Note, copied.Batch, copied.Place));
    }

    [Theory]
    [InlineData("", null, "The file is empty")]
    [InlineData("speces,thickness,width,length\nash,1,2,3", 1, "There is no column 'speces'. Did you mean 'species'?")]
    [InlineData("species,species,thickness,width,length\nash,ash,1,2,30", 1, "The column 'species' is there twice")]
    [InlineData("species,thickness,width,length\nash,1,2,30\nash,1,two,30", 3, "'two' is not a length")]
    [InlineData("species,thickness,width,length\n\nash,1,2,", 3, "every new board needs species, thickness, width and length")]
    [InlineData("species,thickness,width,length\nwallnut,1,2,30", 2, "Did you mean walnut?")]
    [InlineData("species,thickness,width,length\nash,1,2,30,40", 2, "5 cells under 4 headings")]
    [InlineData("species,thickness,width,length,note\nash,1,2,30,\"two\nlines\"\nash,1,2,x,", 4, "'x' is not a length")]
    [InlineData("species,thickness,width,length,surface\nash,1,2,30,smooth", 2, "'smooth' is not known: give rough")]
    [InlineData("species,thickness,width,length,quantity\nash,1,2,30,0", 2, "give 1 to 10000")]
    [InlineData("species,thickness,width,length,surface\nash,4/4,2,30,surfaced", 2, "4/4 is a rough thickness")]
    [InlineData("species,thickness,width,length,kind\nash,1,2,30,sheet", 2, "is solid wood, not a sheet")]
    [InlineData("species,thickness,width,length,logged\nash,1,2,30,3/14/2026", 2, "is not a date")]
    [InlineData("species,thickness,width,length,moisture\nash,1,2,30,damp", 2, "no moisture reading")]
    [InlineData("id,place\nQQQ,wall", 2, "There is no board 'QQQ'")]
    [InlineData("id,place\nK7A,wall\nk7a,wall", 3, "Board K7A stands twice")]
    public void What_cannot_be_right_is_told_with_its_line(string text, int? line, string says)
    {
        var fault = Assert.Throws<OffcutsException>(() => Read(text, DisplayUnit.Inch, Walnut)).Faults[0];
        Assert.Contains(says, fault.Detail, StringComparison.Ordinal);
        Assert.Equal(line, fault.Line);
    }

    [Fact]
    public void Other_new_boards_have_another_mark_and_an_id_has_none_in_it()
    {
        const string Table = "species,thickness,width,length\nash,1,2,30\n";
        Assert.NotEqual(Read(Table).Mark, Read(Table + "ash,1,2,30\n").Mark);
        Assert.NotEqual(Read(Table).Mark, Read(Table.Replace("30", "31", StringComparison.Ordinal)).Mark);
        Assert.Equal(Read(Table).Mark, Read($"id,place,{Table.Replace("\nash", "\n,,ash", StringComparison.Ordinal)}{Walnut.Id},wall,,,,\n", DisplayUnit.Inch, Walnut).Mark);
    }

    [Fact]
    public void A_moisture_reading_is_a_cell_of_its_own()
    {
        var read = Read("species,thickness,width,length,moisture\nash,1,2,30,8.5% on 2026-03-01\nash,1,2,31,\"8,5\"\nash,1,2,32,\n");
        Assert.Equal(
            [new MoistureReading(8.5m, new DateOnly(2026, 3, 1)), new MoistureReading(8.5m), null], read.Added.Select(board => board.Moisture));
    }

    /// <summary>The mark of a table that was imported before there was a column for moisture, as it was computed then: the same table must still be known.</summary>
    [Fact]
    public void A_table_that_says_nothing_of_moisture_has_the_mark_that_it_always_had()
    {
        const string Table = "species,thickness,width,length\nash,1,2,30\n";
        const string Then = "id,species,quantity,thickness,width,length,unit,kind,surface,appearance,ends,warp,defects,batch,place,source,note,status,logged\n"
            + ",white-ash,1,1,2,30,in,solid,rough,clear,,,,,,,,free,\n";
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Then.Replace("\n", NewLine(), StringComparison.Ordinal)))), Read(Table).Mark);
        Assert.NotEqual(Read(Table).Mark, Read(Table.Replace("length", "length,moisture", StringComparison.Ordinal).Replace("30", "30,8%", StringComparison.Ordinal)).Mark);

        static string NewLine() => BoardTable.Write([], DisplayUnit.Inch, ',').EndsWith("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
    }

    [Fact]
    public void Noise_gives_boards_or_faults_and_nothing_else()
    {
        string[] scraps = ["species", ",", ";", "\n", "\"", "ash", "1", "~30", "thickness,width,length", "sep=", "\t", "\uFEFF", "id", "'", "=", "\r\n", "K7A", "4/4", "|", "\0"];
        Gen.Int[0, scraps.Length - 1].Array[0, 25].Select(picks => string.Concat(picks.Select(pick => scraps[pick]))).Sample(text =>
        {
            try
            {
                return Read(text, DisplayUnit.Inch, Walnut).Added.All(board => BoardRules.Check(NewBoard.Of(board)).Count == 0);
            }
            catch (OffcutsException fault)
            {
                return fault.Code == ErrorCode.Invalid && fault.Faults.Count > 0;
            }
        }, iter: 5_000);
    }

    private static BoardTableReading Read(string text, DisplayUnit unit = DisplayUnit.Inch, Board? stored = null) =>
        BoardTable.Read(text, unit, SpeciesCatalogue.Default, id => stored?.Id == id ? stored : null);
}
