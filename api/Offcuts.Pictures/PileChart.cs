using System.Globalization;
using System.Xml.Linq;
using Offcuts.Domain;
using Offcuts.Pictures.Drawing;

namespace Offcuts.Pictures;

/// <summary>The wood on the rack over time as a chart, for black-and-white print.</summary>
public static class PileChart
{
    private const decimal Width = 720;
    private const decimal Height = 300;
    private const decimal Left = 58;
    private const decimal Right = Width - 20;
    private const decimal Top = 44;
    private const decimal Bottom = Height - 34;
    private const int MostDates = 6;

    private const string Css =
        ".pile-chart text{font-family:Arial,Helvetica,'Liberation Sans','DejaVu Sans',sans-serif;fill:#000}"
        + ".pile-chart .strong{font-weight:bold}"
        + ".pile-chart .axis{stroke:#000;stroke-width:1}"
        + ".pile-chart .grid{stroke:#000;stroke-width:.3;stroke-dasharray:2 3}"
        + ".pile-chart .pile{fill:none;stroke:#000;stroke-width:2}"
        + ".pile-chart .fill{fill:#000;fill-opacity:.08}";

    /// <summary>Draws it as a Scalable Vector Graphics document.</summary>
    /// <param name="points">The days on which the pile changed, oldest first; none for a shop that never had any.</param>
    /// <param name="today">The day up to which it is drawn.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Svg(IReadOnlyList<PilePoint> points, DateOnly today, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(points);
        var chart = new XElement(
            Shapes.Svg + "svg", new XAttribute("class", "pile-chart"), new XAttribute("role", "img"),
            new XAttribute("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {Width:0} {Height:0}")),
            Shapes.Title("Wood on the rack"), new XElement(Shapes.Svg + "desc", Describe(points, unit)), new XElement(Shapes.Svg + "style", Css),
            Shapes.Text(4, 18, 14, "start", "Wood on the rack", "strong"), Shapes.Text(4, 34, 10, "start", Describe(points, unit)));
        if (points.Count > 0)
        {
            chart.Add(Drawn(points, today, unit));
        }

        return Markup.Write(chart);
    }

    private static IEnumerable<XElement> Drawn(IReadOnlyList<PilePoint> points, DateOnly today, DisplayUnit unit)
    {
        var first = points[0].Day.DayNumber;
        var days = Math.Max(1, Math.Max(today.DayNumber, points[^1].Day.DayNumber) - first);
        var highest = points.Max(Volume);
        var step = Step(highest);
        var most = step * Math.Max(1, decimal.Ceiling(highest / step));
        for (var value = 0m; value <= most; value += step)
        {
            yield return Shapes.Line(Left, Y(value), Right, Y(value), value == 0 ? "axis" : "grid");
            yield return Shapes.Text(Left - 6, Y(value) + 3.5m, 10, "end", value.ToString("0.####", CultureInfo.InvariantCulture));
        }

        var every = Math.Max(1, (days + MostDates - 1) / MostDates);
        for (var day = 0; day <= days; day += every)
        {
            var anchor = day == 0 ? "start" : X(first + day) > Right - 30 ? "end" : "middle";
            yield return Shapes.Line(X(first + day), Bottom, X(first + day), Bottom + 4, "axis");
            yield return Shapes.Text(X(first + day), Bottom + 17, 10, anchor, DateOnly.FromDayNumber(first + day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        }

        // It stays as it is until the day on which it changes.
        var line = FormattableString.Invariant($"M{Left:0.##} {Y(Volume(points[0])):0.##}")
            + string.Concat(points.Skip(1).Select(point => FormattableString.Invariant($"H{X(point.Day.DayNumber):0.##}V{Y(Volume(point)):0.##}")))
            + FormattableString.Invariant($"H{Right:0.##}");
        yield return new XElement(Shapes.Svg + "path", new XAttribute("class", "fill"), new XAttribute("d", FormattableString.Invariant($"{line}V{Bottom:0.##}H{Left:0.##}Z")));
        yield return new XElement(Shapes.Svg + "path", new XAttribute("class", "pile"), new XAttribute("d", line));

        decimal Volume(PilePoint point) => VolumeText.InUnit(point.CubicMetres, unit);

        decimal X(int day) => Left + ((Right - Left) * (day - first) / days);

        decimal Y(decimal value) => Bottom - ((Bottom - Top) * value / most);
    }

    private static string Describe(IReadOnlyList<PilePoint> points, DisplayUnit unit) => points.Count == 0
        ? "Nothing was ever logged."
        : string.Create(
            CultureInfo.InvariantCulture,
            $"In {VolumeText.Name(unit)}. Since {points[^1].Day:yyyy-MM-dd}: {VolumeText.OfCubicMetres(points[^1].CubicMetres, unit)} in {points[^1].Boards} {(points[^1].Boards == 1 ? "piece" : "pieces")}.");

    // 1, 2 or 5 times a power of ten, so that there are 3 to 8 lines.
    private static decimal Step(decimal most)
    {
        var step = 0.0001m;
        foreach (var factor in Enumerable.Repeat((decimal[])[2, 2.5m, 2], 8).SelectMany(factors => factors))
        {
            if (most / step <= 6)
            {
                break;
            }

            step *= factor;
        }

        return step;
    }
}
