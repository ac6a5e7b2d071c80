using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace Offcuts.Pictures;

/// <summary>Builds and writes elements; what people wrote is escaped by the XML library, never by hand.</summary>
internal static partial class Markup
{
    private static readonly HashSet<string> VoidElements = ["br", "hr", "input", "meta"];

    /// <summary>An element of a page.</summary>
    public static XElement Html(string name, string? cssClass, params object?[] content) =>
        new(name, cssClass is null ? null : new XAttribute("class", cssClass), content);

    /// <summary>Keeps every number with its fraction and unit on one line: 36 at a line's end must not be read for 36 1/2.</summary>
    public static void KeepNumbersWhole(XElement root)
    {
        foreach (var text in root.DescendantNodes().OfType<XText>())
        {
            text.Value = InsideNumber().Replace(text.Value, "\u00A0");
        }
    }

    /// <summary>The elements as text that is well-formed XML and means the same to a browser's HTML parser.</summary>
    public static string Write(XElement root)
    {
        foreach (var element in root.DescendantsAndSelf())
        {
            foreach (var attribute in element.Attributes().Where(attribute => !attribute.IsNamespaceDeclaration))
            {
                attribute.Value = Clean(attribute.Value);
            }

            // To an HTML parser "<td/>" is an open tag; text, even empty, makes the closing tag appear.
            if (element.IsEmpty && !VoidElements.Contains(element.Name.LocalName))
            {
                element.Add("");
            }
        }

        foreach (var text in root.DescendantNodes().OfType<XText>())
        {
            text.Value = Clean(text.Value);
        }

        return root.ToString(SaveOptions.DisableFormatting);
    }

    // Control characters and halves of surrogate pairs cannot stand in XML at all.
    private static string Clean(string text)
    {
        var clean = text.ToCharArray();
        for (var index = 0; index < clean.Length; index++)
        {
            if (index + 1 < clean.Length && XmlConvert.IsXmlSurrogatePair(clean[index + 1], clean[index]))
            {
                index++;
            }
            else if (!XmlConvert.IsXmlChar(clean[index]))
            {
                clean[index] = '\uFFFD';
            }
        }

        return new string(clean);
    }

    [GeneratedRegex("(?<=[0-9]) (?=[0-9]+/[0-9]|in\\b|ft\\b|mm\\b)", RegexOptions.CultureInvariant)]
    private static partial Regex InsideNumber();
}
