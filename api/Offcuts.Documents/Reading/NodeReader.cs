using System.Globalization;
using Offcuts.Domain;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Offcuts.Documents;

/// <summary>Reads the text of a document, YAML or JSON (which is YAML too), into nodes that know their places.</summary>
/// <remarks>
/// Anchors, aliases, tags and several documents in one are refused: a list of parts needs none of them, and a few aliases of
/// aliases can stand for more memory than there is.
/// </remarks>
internal sealed class NodeReader
{
    /// <summary>Longest document, in characters.</summary>
    public const int MaxLength = 1_048_576;

    private const int MaxDepth = 12;

    private const int MaxKey = 60;

    private const string NotRead = "Anchors (&), aliases (*) and tags (!) are not read";

    private readonly Parser parser;
    private readonly DocumentFaults faults;
    private ParsingEvent next;

    private NodeReader(string text, DocumentFaults faults)
    {
        parser = new Parser(new StringReader(text));
        this.faults = faults;
        next = Advance();
    }

    /// <summary>The root of the document.</summary>
    /// <exception cref="OffcutsException">The text is too long or is not YAML.</exception>
    public static Mapping Read(string text, DocumentFaults faults)
    {
        if (text.Length > MaxLength)
        {
            throw faults.Fatal("#", null, string.Create(
                CultureInfo.InvariantCulture, $"The document has {text.Length} characters: at most {MaxLength} are read."));
        }

        return new NodeReader(text.TrimStart('\uFEFF'), faults).Document();
    }

    private Mapping Document()
    {
        Take(); // the stream's start
        if (next is StreamEnd)
        {
            throw faults.Fatal("#", 1, "The document is empty.");
        }

        Take(); // the document's start
        var root = Node("#", 1);
        Take(); // the document's end
        if (next is not StreamEnd)
        {
            throw faults.Fatal("#", Line(next), "A second document begins here: put each into a file of its own.");
        }

        return root as Mapping
            ?? throw faults.Fatal("#", root.Line, $"The document is {root.Kind}: it should be keys with values, for instance name: Hall bench.");
    }

    private Node Node(string pointer, int depth)
    {
        if (depth > MaxDepth)
        {
            throw faults.Fatal(pointer, Line(next), "Lists and groups of keys are nested too deeply here.");
        }

        var found = Take();
        if (found is not NodeEvent { Anchor.IsEmpty: true, Tag.IsEmpty: true } start)
        {
            throw faults.Fatal(pointer, Line(found), $"{NotRead}: write the value out, in quotation marks if it begins so.");
        }

        return start switch
        {
            YamlDotNet.Core.Events.Scalar scalar => new Scalar(Line(scalar), pointer, scalar.Value, scalar.Style != ScalarStyle.Plain),
            SequenceStart => List(Line(start), pointer, depth),
            _ => Keys(Line(start), pointer, depth),
        };
    }

    private Sequence List(int line, string pointer, int depth)
    {
        var items = new List<Node>();
        while (next is not SequenceEnd)
        {
            items.Add(Node(string.Create(CultureInfo.InvariantCulture, $"{pointer}/{items.Count}"), depth + 1));
        }

        Take();

        return new Sequence(line, pointer, items);
    }

    private Mapping Keys(int line, string pointer, int depth)
    {
        var entries = new List<Entry>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var self = new Mapping(line, pointer, entries);
        while (next is not MappingEnd)
        {
            var found = Node(pointer, depth + 1);
            if (found is not Scalar key)
            {
                throw faults.Fatal(pointer, found.Line, "A list or a group of keys stands where a key should be.");
            }

            if (key.Text.Length > MaxKey)
            {
                throw faults.Fatal(pointer, key.Line, $"A key begins here with '{key.Text[..MaxKey]}': no key is so long. Is a colon missing?");
            }

            var value = Node(self.Below(key.Text), depth + 1);
            if (seen.Add(key.Text))
            {
                entries.Add(new Entry(key.Text, key.Line, value));
            }
            else
            {
                faults.Add(self.Below(key.Text), key.Line, $"The key '{key.Text}' is there twice: keep one.");
            }
        }

        Take();
        return self;
    }

    private ParsingEvent Take()
    {
        var taken = next;
        next = taken is StreamEnd ? taken : Advance();
        return taken;
    }

    private ParsingEvent Advance()
    {
        try
        {
            return parser.MoveNext() ? parser.Current! : throw new YamlException("The document ends too early.");
        }
        catch (YamlException problem)
        {
            throw faults.Fatal("#", Math.Max(1, (int)problem.Start.Line), $"This is not YAML or JSON here: {problem.Message}");
        }
        catch (ArgumentException)
        {
            // The library throws this, without a place, at a tag that is no URI, such as !![ (found by DocumentFuzzTests).
            throw faults.Fatal("#", next is null ? 1 : Line(next), $"{NotRead}, here or on the next line: put a text that begins with ! in quotation marks.");
        }
        catch (InvalidOperationException)
        {
            // The library's scanner throws this, without a place, at a sign that YAML reserves (found by DocumentFuzzTests).
            throw faults.Fatal("#", next is null ? 1 : Line(next), "This is not YAML or JSON here or on the next line: put a text that begins with @ or ` in quotation marks.");
        }
    }

    private static int Line(ParsingEvent at) => (int)at.Start.Line;
}
