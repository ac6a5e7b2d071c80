namespace Offcuts.Domain;

/// <summary>The least worth that plans for the same money use up, as a sentence.</summary>
public static class WorthText
{
    /// <summary>What a plan uses up, beside the least for its money.</summary>
    /// <param name="used">Worth consumed less worth returned; less than nothing where more is returned.</param>
    /// <param name="bound">No plan for the money uses up less than this.</param>
    /// <param name="money">How an amount is written; asked for none below zero.</param>
    public static string Of(decimal used, decimal bound, Func<decimal, string> money)
    {
        ArgumentNullException.ThrowIfNull(money);
        var (isMore, mayBeMore) = (used < 0, bound < 0);
        if (used == bound)
        {
            return isMore
                ? $"Leaves wood worth {money(-used)} more than it cuts up, the most that any plan for this money can."
                : $"Uses up wood worth {money(used)}, the least that any plan for this money can.";
        }

        return isMore ? $"Leaves wood worth {money(-used)} more than it cuts up; no plan for this money can leave more than {money(-bound)} more."
            : mayBeMore ? $"Uses up wood worth {money(used)}; no plan for this money can leave more than {money(-bound)} beyond what it cuts up."
            : $"Uses up wood worth {money(used)}; no plan for this money can use up less than {money(bound)}.";
    }

    /// <summary>The same of a plan; null where no bound is known.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="currency">The shop's currency.</param>
    public static string? Of(Plan plan, string currency)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.WorthBound is { } bound
            ? Of(plan.WorthUsed.MinorUnits, bound.MinorUnits, amount => MoneyText.Format(new Money((long)amount), currency))
            : null;
    }
}
