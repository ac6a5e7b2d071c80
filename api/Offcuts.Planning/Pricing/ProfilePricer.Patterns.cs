using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <content>Reads the best pattern back from the knapsacks.</content>
internal sealed partial class ProfilePricer
{
    private const double Rounding = 1e-9;

    /// <summary>Whether the sections last read back lack what the knapsacks counted beyond the need.</summary>
    public bool LeftOut { get; private set; }

    /// <summary>
    /// The sections of the best pattern on a first extent in ticks. Proper ones leave out pieces beyond what is needed; improper
    /// ones have all that the knapsacks counted. Call after <see cref="Open"/>.
    /// </summary>
    /// <param name="first">The first extent.</param>
    /// <param name="proper">Whether to leave out what is not needed.</param>
    /// <param name="stillNeeded">What is needed, if less than at the prices; what is taken is taken off it.</param>
    public List<Section> Sections(long first, bool proper, long[]? stillNeeded = null)
    {
        var best = Best(first);
        var need = stillNeeded ?? Limits(proper);
        LeftOut = false;
        var sections = new List<Section>();
        boardKnapsack.Solve(leaders, best.At, trace: true);

        // Long sections first: what is missing at the end then costs the short ones.
        foreach (var (tag, count) in boardKnapsack.Trace(best.At).OrderByDescending(leader => FirstOfLeader(leader.Tag)).ThenBy(leader => leader.Tag).ToList())
        {
            for (var n = 0; n < count; n++)
            {
                AddIfAny(sections, FirstOfLeader(tag), Bands(tag, proper ? need : Limits(proper)));
            }
        }

        if (best.Strips)
        {
            var rest = first + view.Kerf - (best.At * view.FirstCell);
            AddRips(sections, rest, proper ? need : Limits(proper));
        }

        return sections;
    }

    /// <summary>
    /// For every leader, the sections of a pattern that has it and fills the rest of the first extent as well as the knapsack knows: proper ones,
    /// some of them alike. Only those that may be worth more than <paramref name="least"/>. Call after <see cref="Open"/>.
    /// </summary>
    public List<List<Section>> Variants(long first, double least)
    {
        var capacity = view.FirstCapacity(first);
        boardKnapsack.Solve(leaders, capacity, trace: true);
        var found = new List<List<Section>>();
        foreach (var led in leaders.Where(led => led.Size <= capacity && led.Value + boardKnapsack.Best[capacity - led.Size] > least))
        {
            var need = Limits(proper: true);
            var sections = new List<Section>();
            AddIfAny(sections, FirstOfLeader(led.Tag), Bands(led.Tag, need));
            foreach (var (tag, count) in boardKnapsack.Trace(capacity - led.Size).OrderByDescending(leader => FirstOfLeader(leader.Tag)).ThenBy(leader => leader.Tag).ToList())
            {
                for (var n = 0; n < count; n++)
                {
                    AddIfAny(sections, FirstOfLeader(tag), Bands(tag, need));
                }
            }

            found.Add(sections);
        }

        return found;
    }

    /// <summary>The best section of every leader by itself, within what is needed. Call after <see cref="Open"/>.</summary>
    public IEnumerable<Section> BestSections()
    {
        foreach (var leader in leaders)
        {
            var bands = Bands(leader.Tag, Limits(proper: true));
            if (bands.Count > 0)
            {
                yield return SectionOf(FirstOfLeader(leader.Tag), bands);
            }
        }
    }

    /// <summary>What may be taken: what is needed, or within one section any number of blanks.</summary>
    private long[] Limits(bool proper) => proper
        ? (long[])prices.Need.Clone()
        : [.. prices.Need.Select((need, row) => need > 0 && model.Rows[row] is PartRow ? int.MaxValue : need)];

    private long FirstOfLeader(int tag) => tag < value.Length ? view.First[tag] : view.Profile.Families[tag - value.Length].Along;

    private void AddIfAny(List<Section> sections, long first, List<Band> bands)
    {
        if (bands.Count > 0)
        {
            sections.Add(SectionOf(first, bands));
        }
    }

    // On a coarse grid a blank that is a little longer than the leader may take as many cells: then the section is as long as that.
    private Section SectionOf(long first, List<Band> bands) => new(
        Math.Max(first, bands.Max(band => band.Strip is { } strip ? (view.RipFirst ? 0 : strip.Along) : band.Run.Max(blank => view.RipFirst ? blank.Across : blank.Along))), bands);

    private List<Band> Bands(int tag, long[] need)
    {
        var bands = new List<Band>();
        var content = contents[tag];
        var leads = tag < value.Length;
        var section = leads ? view.FirstCells[tag] : view.FamilyFirstCells[tag - value.Length];
        if (leads)
        {
            AddBand(bands, tag, tag, section, need);
        }

        if (content.At > 0)
        {
            var capacity = AcrossCapacity(section, content, leads && bands.Count > 0 ? tag : NoLeader, need);
            foreach (var (blank, count) in acrossKnapsack.Trace(capacity).OrderByDescending(band => view.Second[band.Tag]).ToList())
            {
                for (var n = 0; n < count; n++)
                {
                    AddBand(bands, blank, tag, section, need);
                }
            }
        }

        if (content.Strips)
        {
            var leaderCells = leads ? view.SecondCells[tag] : 0;
            var rest = openSecond + view.Kerf - ((long)(leaderCells + content.At) * view.SecondCell);
            foreach (var (family, net, rows) in Lay(MixOf(section), rest, need))
            {
                if (rows.Length > 0)
                {
                    bands.Add(new Band(net + family.Edge, [], new StripCut(rows[0], net, family.Along)));
                }
            }
        }

        return bands;
    }

    /// <summary>
    /// Solves for the bands beside the leader within what is still needed, and gives the capacity to trace. Where that is less than
    /// was counted on, and nothing else fills the section, all its room may serve.
    /// </summary>
    private int AcrossCapacity(int section, Content content, int leader, long[] need)
    {
        var items = Within(BandItems(section, leader), need).ToList();
        acrossKnapsack.Solve(items, content.At, trace: true);
        if (acrossKnapsack.Best[content.At] >= Array.Find(Beside(section, leader), step => step.At == content.At).Value - Rounding)
        {
            return content.At;
        }

        LeftOut = true;
        var capacity = !content.Strips ? view.SecondCapacity(openSecond) - (leader == NoLeader ? 0 : view.SecondCells[leader]) : content.At;
        acrossKnapsack.Solve(items, capacity, trace: true);
        return capacity;
    }

    private IEnumerable<KnapsackItem> Within(IEnumerable<KnapsackItem> items, long[] need) =>
        items.Select(item => item with { Copies = (int)Math.Min(item.Copies, view.Blanks[item.Tag].Times(need[view.Blanks[item.Tag].Row])) });

    private void AddBand(List<Band> bands, int blank, int leader, int section, long[] need)
    {
        var blanks = new List<BlankOption>();
        Take(view.Blanks[blank], blanks, need);
        // Sizes are rounded up to cells, and so is the section: what fits in it by cells may not fit by its true length.
        var left = Math.Max(FirstOfLeader(leader), view.First[blank]) - view.First[blank];
        var room = all ? BestRun(blank, section).At : section - view.FirstCells[blank];
        if (run.Length > 0 && room > 0 && BandValue(blank, section) > value[blank])
        {
            runKnapsack.Solve(Within(RunItems(view.SecondCells[blank]), need), room, trace: true);
            LeftOut |= runKnapsack.Best[room] < run[Array.BinarySearch(runWidths, view.SecondCells[blank])][room] - Rounding;
            foreach (var (other, count) in runKnapsack.Trace(room).OrderByDescending(item => view.First[item.Tag]).ToList())
            {
                for (var n = 0; n < count; n++)
                {
                    if (view.First[other] + view.Kerf > left)
                    {
                        LeftOut = true;
                        break;
                    }

                    if (Take(view.Blanks[other], blanks, need))
                    {
                        left -= view.First[other] + view.Kerf;
                    }
                }
            }
        }

        if (blanks.Count > 0)
        {
            bands.Add(new Band(blanks.Max(item => view.RipFirst ? item.Along : item.Across), blanks, null));
        }
    }

    private bool Take(BlankOption blank, List<BlankOption> into, long[] need)
    {
        if (need[blank.Row] <= 0)
        {
            LeftOut = true;
            return false;
        }

        var useful = blank.Within(need[blank.Row]);
        LeftOut |= useful.Yield < Math.Min(blank.Yield, prices.Need[blank.Row]);
        need[blank.Row] -= useful.Yield;
        into.Add(useful);
        return true;
    }

    private void AddRips(List<Section> sections, long rest, long[] need)
    {
        foreach (var (family, net, rows) in Lay(openMix!, rest, need))
        {
            AddIfAny(sections, net + family.Edge, [.. rows.Select(row => new Band(family.Along, [], new StripCut(row, net, family.Along)))]);
        }
    }
}
