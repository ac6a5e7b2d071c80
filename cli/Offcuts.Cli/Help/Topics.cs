namespace Offcuts.Cli.Help;

/// <summary>Help that belongs to no single command.</summary>
internal static class Topics
{
    // Each is an example with every key that this program itself reads, so that it cannot rot.
    private static readonly string[] Files = ["board-list-files", "design-files", "keep-rule-files", "price-list-files"];

    /// <summary>The names of all topics.</summary>
    public static IEnumerable<string> Names => Texts.Keys.Concat(Files);

    private static IReadOnlyDictionary<string, string> Texts { get; } = new SortedDictionary<string, string>(StringComparer.Ordinal)
    {
        ["exit-codes"] = """
            Exit codes

              0    done
              1    failed: the named thing does not exist, a file cannot be used, you said no, the server is busy with
                   other requests, or the program is at fault
              2    wrong command line or input; nothing was changed
              3    done, but incomplete: the plan has missing parts, 'find' found too few, 'stretch' or 'fill' found none,
                   or time was up before 'fit' knew all places
              4    kept for access that is denied (there are no access tokens yet)
              5    it contradicts what is stored; look again and decide anew
              6    the server cannot be reached or does not answer in time
              7    stored data is damaged; nothing was changed
              8    the answer of 'keep?' is no: let it go
              130  stopped by Ctrl-C; 'plan' and 'queue plan' keep their best plan so far
              143  stopped by SIGTERM

            Treat a code that is not listed as failure. Data goes to standard output, messages to standard error. With --json the
            last line of standard error after a failure is {"type","code","message","exitCode"}, and standard output is one
            document: an object, or where a command was given several ids an array with an object for each, in their order.
            """,
        ["environment"] = """
            Environment

              OFFCUTS_URL                 address of the server to use; --server and --data win over it
              OFFCUTS_DATA                folder of the store to use if there is no server; --data wins over it
              OFFCUTS_ALLOW_NON_LOOPBACK  1 lets 'offcuts serve' listen where other machines can reach it; there are no access
                                          tokens yet, so whoever reaches it may change everything
              XDG_DATA_HOME               without the above the store is in $XDG_DATA_HOME/offcuts, or in ~/.local/share/offcuts if
                                          it is unset or no absolute path
              HOME                        the home folder
              NO_COLOR                    if not empty, no escape sequences are written; --no-color does the same
              TERM                        'dumb' means no escape sequences and no progress line
              TMPDIR                      where the demo's store is made

            'offcuts status' says which server or store is used, and why.
            """,
        ["board-condition"] = """
            The condition of a board

            Warp: lay a straightedge or a string over the whole board and measure the largest gap.

              bow     along the face, end to end          crook   along the edge, end to end
              cup     across the face, edge to edge       twist   how high one corner stands when the other three lie flat

              offcuts boards add 4/4 x 8 x 84 --species cherry --warp "bow 1/2, cup 1/8"

            A piece cut from the board keeps less of it: half the length keeps a quarter of the bow, half the width a quarter of
            the cup. So short and narrow parts come out of boards that could not be flattened whole, and the plan says for each what
            it counts on losing. Surfaced stock that is already at a part's thickness may be out of flat by --flat-enough (offcuts
            shop set; 1/32 in at first). Sheets are never planed: their warp is not recorded.

            Ends: sound ends lose nothing. What comes off a checked end and off an end of rough stock that nobody looked at is set by
            --end-trim-checked and --end-trim-unknown, the cut included. Both are nothing at first. Common practice: 1 to 2 in off a
            checked end, 1/2 to 1 in off an unknown one; cut until a thin slice no longer snaps along a check. A plan says of each
            leftover which of its ends are sound. --factory-edge-trim comes off all four edges of a sheet; an offcut of which both ends
            are sound loses nothing.

            Moisture: --moisture "8% on 2026-11-01" is what a meter read and when. Wood for one panel should be alike within 2 points; a
            plan warns of a wide panel whose boards are not, or were last measured long ago (offcuts shop set --reading-days). Go by the
            meter's manual for species and temperature.

            Surface: rough, skip-planed (also skip, hit-or-miss) or surfaced. Each has its own milling allowances. Write the thickness
            that skip-planed wood has, not the one it is sold by.

            Reclaimed wood may hold metal: go over it with a detector before any blade. Wood that moved while it dried may move again
            and bind a saw blade: the machine's manual decides what is safe.
            """,
        ["board-tables"] = """
            Boards as a table for spreadsheets (CSV)

            'offcuts boards export -o rack.csv' writes all boards, one row each; 'offcuts boards import rack.csv' reads such a table. The
            first row names the columns, in any order; only species, thickness, width and length are needed for new boards:

              id          empty for a new board; else the board that the row changes
              species     its id or name
              quantity    how many exactly alike
              thickness, width, length
                          decimal numbers (a spreadsheet takes 3/4 for a date); ~30 is an estimate
              unit        in or mm; the shop's if it is empty
              kind        solid or sheet; follows from the species
              surface     rough, skip planed, surfaced
              appearance  clear, sound knots, paint
              ends, warp  left checked, right sound; bow 1/4in, cup 1/8in
              defects     with | between them: knot 10..12in x 1..2in | split 0..4in
              moisture    a meter's reading: 8%, 8.5% on 2026-11-01
              batch, place, source, note
              status      free, reserved, used, gone
              logged      of new boards: 2026-03-14

            Cells may be parted by commas, semicolons or tabs; where commas do not part them, numbers may have decimal commas. A file may
            begin with a byte order mark or a line sep=; and be saved again by any spreadsheet.

            A row with an id changes that board: an empty cell, a column that is not there and a cell that you did not touch leave it
            as it is. Rows without an id are logged as new boards. The same new rows are logged only once, however their file was
            saved: importing a file again makes no board twice (--again does, for another delivery that is exactly alike).
            All rows are taken or none.
            """,
        ["quick-lines"] = """
            Boards as you would say them

            'offcuts boards log' takes one line for each board, or for several exactly alike:

              3 @ 3/4 x 5 1/2 x 36 ash
              4/4 rough x 7 x 62 walnut, split 3in end, rack 2
              walnut 62 long x 7 wide x 4/4, bow 1/4, left end checked
              5/4 x 4 x ~30 wh oak, lot 7, from bench build, note: streaks at one end

            Say things in any order; commas help where two things could run together. Numbers are thickness x width x length unless
            they are called thick, wide or long; 4/4, 5/4 and so on are thicknesses wherever they stand (see 'offcuts help lengths').
            Where the thickness stands last and the rest would be wider than long (36 x 5 x 4/4) you are asked which is which.

              how many     3 @, 3 pcs, 3 of, qty 3, (3)
              species      its name, a usual abbreviation (wo, hm, syp), or the beginnings of its words: wh oak. They mean a species
                           that you own, where you own one that begins so. Sheets are called ply, mdf and so on.
              milled       rough, skip (hit or miss), surfaced, planed, s2s, s4s
              faces        clear, sound knots (knotty), paint
              defects      split 3in end, check 2 both ends, knot 10..12 x 1..2. An end that is not called left or right is the left
                           one: measure from there.
              warp, ends   bow 1/4, cup 1/8, twist, crook; ends checked, left end sound
              moisture     8% mc, mc 8.5 (read today)
              where        rack 2, offcut bin, behind the door, place ANYTHING; no place
              batch        batch NAME, lot 7, log 3; no batch
              the rest     from WHERE IT CAME FROM, note: ANYTHING

            Species, place and batch carry on to the next line until it says otherwise. A line of nothing else sets them:
            walnut, rack 2. A line that begins with # is a remark.

            A size that you only guess is written ~30, about 30 or 30ish. A plan counts less of it (offcuts shop set
            --estimate-margin-length) and says to measure the board first.

            What was understood is said in words. What was not is pointed at, and nothing of that line is logged; of a file, nothing
            at all.

            'offcuts stocktake' reads new boards like that. 'offcuts find' reads the finished piece that you look for: species and size,
            and if you like how many, what its faces must be good for, and the place or batch that it is to come from.
            """,
        ["lengths"] = """
            Lengths and sizes

            Write them as on a drawing; a number without a unit is in the shop's unit (offcuts shop show):

              36 1/2   36-1/2"   3' 4 1/2"   3ft 4in   0.75in   915mm   91.5 cm   1.2m   5/4

            5/4 and other quarters are rough thicknesses: 5/4 is 1 1/4 in. Inches are exact to 1/64, millimetres to 1/10. A comma
            is no decimal point: write 3.2mm, not 3,2mm.

            A size is thickness x width x length, the length along the grain; quotes are needed only for inch and foot marks:

              3/4 x 5 1/2 x 36     4/4 x 7 x 8ft     18mm x 300 x 900     2x4 x 8ft

            Of a softwood, two whole numbers without spaces between them are a nominal size: 2x4 x 8ft and 2x4x8ft are dressed
            wood, 1 1/2 x 3 1/2 in. What was measured is written with spaces, 2 x 4 x 8ft; of any other wood every size is as
            measured. Solid wood is at most 12 in thick and 48 in wide, a sheet at most 4 in thick. A size that is
            exact only in millimetres is shown in them; a number that had to be rounded to be shown is marked with ~.
            """,
    };

    /// <summary>What a topic says; null if there is none of this name.</summary>
    public static string? Find(string name)
    {
        if (!Files.Contains(name))
        {
            return Texts.GetValueOrDefault(name);
        }

        using var reader = new StreamReader(typeof(Topics).Assembly.GetManifestResourceStream($"help/{name}")!);
        return reader.ReadToEnd().TrimEnd();
    }
}
