using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Offcuts.Pictures.Drawing;
using QRCoder;

namespace Offcuts.Pictures.Labels;

/// <summary>A QR code (ISO/IEC 18004) with the quiet zone that readers need around it.</summary>
internal static class QrMark
{
    /// <summary>The code that holds a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="x">Left edge, in the picture's units.</param>
    /// <param name="y">Upper edge.</param>
    /// <param name="side">Width and height, the quiet zone included.</param>
    public static XElement Of(string text, decimal x, decimal y, decimal side)
    {
        // Level M bears a smudge on 15 % of it.
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var modules = code.ModuleMatrix;
        var path = new StringBuilder();
        for (var row = 0; row < modules.Count; row++)
        {
            for (var column = 0; column < modules.Count; column++)
            {
                var from = column;
                while (column < modules.Count && modules[row][column])
                {
                    column++;
                }

                if (column > from)
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{from} {row}h{column - from}v1h-{column - from}z");
                }
            }
        }

        return new XElement(
            Shapes.Svg + "svg", new XAttribute("class", "qr"),
            Shapes.At("x", x), Shapes.At("y", y), Shapes.At("width", side), Shapes.At("height", side),
            new XAttribute("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {modules.Count} {modules.Count}")),
            new XAttribute("shape-rendering", "crispEdges"),
            new XElement(Shapes.Svg + "path", new XAttribute("d", path.ToString())));
    }
}
