using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>
/// The blanks from which a board of one class gives pieces of a part: whole or in layers, of the board's thickness or resawn, one for one or
/// several in a row. Only blanks that lie with their length along the board are resawn or hold several.
/// </summary>
internal sealed class PartOptions(Shop shop, Milling milling)
{
    /// <summary>More lengths of several in a row bring nothing that these do not.</summary>
    private const int MostGangs = 3;

    /// <summary>All of them; none if the class does not suit the part.</summary>
    public List<BlankOption> Of(PartRow part, BoardClass cls)
    {
        var options = new List<BlankOption>();
        foreach (var layers in part.LayerCounts.Prepend(1))
        {
            foreach (var option in Of(part, cls, layers))
            {
                // More layers are of use only where the same blank gives more that way.
                if (!options.Exists(known => (known.Along, known.Across, known.Turned) == (option.Along, option.Across, option.Turned) && known.Yield >= option.Yield))
                {
                    options.Add(option);
                }
            }
        }

        return options;
    }

    private IEnumerable<BlankOption> Of(PartRow part, BoardClass cls, int layers)
    {
        var recipe = new Recipe(1, 1, layers);
        var (least, most) = layers == 1 ? (part.Thickness, part.MostThickness) : (recipe.PieceThickness(part.Thickness), recipe.PieceThickness(part.Thickness));
        var allowances = milling.Allowances(cls);
        var width = part.Width + allowances.Width;
        if (!milling.SuitsThickness(cls, least, most, out _) || (layers > 1 && width > shop.PlanerWidth))
        {
            yield break;
        }

        var units = part.Units / layers;
        var safe = milling.SafeLength(cls, least, most);
        var (longer, wider) = Freedom(part, cls, allowances);
        foreach (var (inRow, length, carried) in Rows(part, allowances.Length, safe, (int)Math.Min(Limits.MaxQuantity, (long)part.Quantity * layers)))
        {
            var across = width + cls.Flattening.Crook(length);
            if (milling.Serves(cls, least, most, length, across, ownWidth: across))
            {
                var slices = Milling.IsUsedAsItIs(cls, least, most) ? 1 : milling.Slices(cls, least, length, across);
                var used = recipe with { InRow = inRow, Slices = slices, Carried = carried };
                var isPlain = used == Recipe.Plain;
                yield return new BlankOption(
                    part.Index, length.Ticks, across.Ticks, Turned: false, used, used.Most, units, isPlain ? longer : 0, isPlain ? wider : 0);
            }
        }

        var along = part.Length + allowances.Length;
        var turnedAcross = along + cls.Flattening.Crook(width);
        if (part.MayTurn && along != width && (shop.ShortBlanks != ShortBlanks.Refuse || width >= safe)
            && milling.Serves(cls, least, most, width, turnedAcross, ownWidth: width))
        {
            yield return new BlankOption(part.Index, width.Ticks, turnedAcross.Ticks, Turned: true, recipe, 1, units, wider, longer);
        }
    }

    /// <summary>By how much a blank may be longer and wider than the least. A larger blank keeps more of the board's warp, so there it stays at that.</summary>
    private (long Longer, long Wider) Freedom(PartRow part, BoardClass cls, Allowances allowances)
    {
        _ = milling.SuitsThickness(cls, part.Thickness, part.MostThickness, out var widest);
        var width = widest is { } limit ? Length.Min(part.Most.Width, limit - allowances.Width) : part.Most.Width;
        return cls.Flattening.Warp.IsFlat ? ((part.Most.Length - part.Length).Ticks, Math.Max(0, (width - part.Width).Ticks)) : (0, 0);
    }

    /// <summary>How many in a row on what length: one if that is safe, else as many as make it so, or fewer on the safe length.</summary>
    /// <param name="part">The part.</param>
    /// <param name="allowance">Length allowance of the blank.</param>
    /// <param name="safe">The shortest blank that is safe.</param>
    /// <param name="wanted">The most places in a row that are of use.</param>
    private IEnumerable<(int InRow, Length Length, bool Carried)> Rows(PartRow part, Length allowance, Length safe, int wanted)
    {
        var single = part.Length + allowance;
        if (single >= safe || shop.ShortBlanks != ShortBlanks.Refuse)
        {
            yield return (1, single, false);
        }

        if (single >= safe)
        {
            yield break;
        }

        // k l + (k - 1) kerf + allowance reaches the safe length from this k on.
        var step = part.Length + shop.Kerf;
        var enough = (int)Math.Min(Limits.MaxQuantity, ((safe - allowance + shop.Kerf).Ticks + step.Ticks - 1) / step.Ticks);
        yield return (Math.Min(enough - 1, wanted), safe, true);
        for (var count = enough; count <= Math.Min(wanted, enough + MostGangs - 1); count++)
        {
            yield return (count, Length.FromTicks((step.Ticks * count) - shop.Kerf.Ticks) + allowance, false);
        }
    }
}
