namespace Offcuts.Documents;

/// <summary>A node of a document as it was written, with its place.</summary>
/// <param name="Line">Line from 1.</param>
/// <param name="Pointer">JSON pointer as a URI fragment.</param>
internal abstract record Node(int Line, string Pointer)
{
    /// <summary>The pointer to something below this node.</summary>
    public string Below(string key) =>
        $"{Pointer}/{Uri.EscapeDataString(key.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal))}";

    /// <summary>What the node is, in a message.</summary>
    public abstract string Kind { get; }
}

/// <summary>A single value.</summary>
/// <param name="Line">Line from 1.</param>
/// <param name="Pointer">JSON pointer as a URI fragment.</param>
/// <param name="Text">Its text.</param>
/// <param name="IsQuoted">Whether it stands in quotation marks or a block, so that it can only be a text.</param>
internal sealed record Scalar(int Line, string Pointer, string Text, bool IsQuoted) : Node(Line, Pointer)
{
    public override string Kind => "a single value";

    /// <summary>Whether nothing at all was written.</summary>
    public bool IsNothing => !IsQuoted && Text is "" or "~" or "null" or "Null" or "NULL";
}

/// <summary>A list.</summary>
/// <param name="Line">Line from 1.</param>
/// <param name="Pointer">JSON pointer as a URI fragment.</param>
/// <param name="Items">What is in it.</param>
internal sealed record Sequence(int Line, string Pointer, IReadOnlyList<Node> Items) : Node(Line, Pointer)
{
    public override string Kind => "a list";
}

/// <summary>Keys with their values.</summary>
/// <param name="Line">Line from 1.</param>
/// <param name="Pointer">JSON pointer as a URI fragment.</param>
/// <param name="Entries">The entries in order, a key once.</param>
internal sealed record Mapping(int Line, string Pointer, IReadOnlyList<Entry> Entries) : Node(Line, Pointer)
{
    public override string Kind => "a group of keys";
}

/// <summary>One key with its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="Line">Line of the key, from 1.</param>
/// <param name="Value">The value.</param>
internal sealed record Entry(string Key, int Line, Node Value);
