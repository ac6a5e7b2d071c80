using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>Collects what is wrong with a document, so that all of it is told at once.</summary>
/// <param name="what">What the document is: a design, a price list, a board list.</param>
internal sealed class DocumentFaults(string what)
{
    // Enough to mend a file by; the thousandth repetition of one mistake helps nobody.
    private const int Most = 50;

    private readonly List<InputFault> found = [];

    public bool Any => found.Count > 0;

    public void Add(string pointer, int? line, string detail)
    {
        found.Add(new InputFault(pointer, detail, line));
        if (found.Count >= Most)
        {
            ThrowIfAny();
        }
    }

    public void Add(Node at, string detail) => Add(at.Pointer, at.Line, detail);

    /// <summary>Adds faults of the domain's rules, whose pointers begin at a node, with the lines of what they point to.</summary>
    public void Add(IEnumerable<InputFault> faults, Node from)
    {
        foreach (var fault in faults)
        {
            var below = fault.Pointer.TrimStart('#');
            Add(from.Pointer + below, LineOf(from, below.Split('/', StringSplitOptions.RemoveEmptyEntries)), fault.Detail);
        }
    }

    /// <summary>The exception for a fault after which nothing more can be read.</summary>
    public OffcutsException Fatal(string pointer, int? line, string detail)
    {
        found.Add(new InputFault(pointer, detail, line));
        return Exception();
    }

    public void ThrowIfAny()
    {
        if (Any)
        {
            throw Exception();
        }
    }

    private OffcutsException Exception()
    {
        var first = found[0];
        var line = first.Line is { } number ? string.Create(CultureInfo.InvariantCulture, $"line {number}: ") : "";
        var others = found.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" ({found.Count} faults in all)") : "";
        return new OffcutsException(ErrorCode.Invalid, $"The {what} cannot be read: {line}{first.Detail}{others}", found);
    }

    // The nearest thing that is really there: a rule may point to a key that was left out.
    private static int LineOf(Node node, ReadOnlySpan<string> path)
    {
        if (path.IsEmpty)
        {
            return node.Line;
        }

        var key = path[0];
        return node switch
        {
            Mapping mapping when mapping.Entries.FirstOrDefault(entry => entry.Key == key) is { } entry => LineOf(entry.Value, path[1..]),
            Sequence sequence when int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < sequence.Items.Count
                => LineOf(sequence.Items[index], path[1..]),
            _ => node.Line,
        };
    }
}
