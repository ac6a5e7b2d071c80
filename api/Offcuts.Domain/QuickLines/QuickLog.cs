namespace Offcuts.Domain;

/// <summary>Reads many lines, one after the other.</summary>
public static class QuickLog
{
    /// <summary>
    /// The reading of every line, in their order; never throws. A line that is not understood carries nothing on: the next is read as if it were
    /// not there. What one line names is known to the next, so that oak, after white oak, is white oak.
    /// </summary>
    /// <param name="lines">The lines, without their line breaks.</param>
    /// <param name="words">The names that they may use.</param>
    /// <param name="bareUnit">The unit of numbers where none is written.</param>
    /// <param name="carry">What carries on from before.</param>
    public static IReadOnlyList<QuickReading> Read(IEnumerable<string> lines, QuickWords words, DisplayUnit bareUnit, QuickCarry carry)
    {
        var readings = new List<QuickReading>();
        foreach (var line in lines)
        {
            var reading = new QuickLineReader(words, bareUnit).Read(line, carry);
            readings.Add(reading);
            if (reading.Carry != carry)
            {
                carry = reading.Carry;
                words = words.With(carry);
            }
        }

        return readings;
    }
}
