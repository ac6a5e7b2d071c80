using Offcuts.Domain;

namespace Offcuts.Pictures.Labels;

/// <summary>A sheet of labels: how large each is and where they lie.</summary>
public sealed record LabelStock
{
    /// <summary>Its name: the paper, and how many labels lie across and down.</summary>
    public required string Name { get; init; }

    /// <summary>Width of the sheet.</summary>
    public required Length PaperWidth { get; init; }

    /// <summary>Height of the sheet.</summary>
    public required Length PaperHeight { get; init; }

    /// <summary>Labels across.</summary>
    public required int Columns { get; init; }

    /// <summary>Labels down.</summary>
    public required int Rows { get; init; }

    /// <summary>Width of a label.</summary>
    public required Length Width { get; init; }

    /// <summary>Height of a label.</summary>
    public required Length Height { get; init; }

    /// <summary>What lies between two labels side by side; they touch above and below.</summary>
    public Length Gap { get; init; }

    /// <summary>Labels on a sheet.</summary>
    public int Count => Columns * Rows;

    /// <summary>From the sheet's left edge to the first label: what is left over lies on both sides alike.</summary>
    public Length Left => Half(PaperWidth - (Width * Columns) - (Gap * (Columns - 1)));

    /// <summary>From the sheet's top edge to the first label.</summary>
    public Length Top => Half(PaperHeight - (Height * Rows));

    /// <summary>Sheets that are commonly sold (common practice; the dimensions from memory): check yours against a sheet on plain paper.</summary>
    public static IReadOnlyList<LabelStock> All { get; } =
    [
        Letter("letter-3x10", 3, 10, Inches(2, 5, 8), Inches(1), Inches(0, 1, 8)),
        Letter("letter-2x10", 2, 10, Inches(4), Inches(1), Inches(0, 3, 16)),
        Letter("letter-2x5", 2, 5, Inches(4), Inches(2), Inches(0, 3, 16)),
        Letter("letter-4x20", 4, 20, Inches(1, 3, 4), Inches(0, 1, 2), Inches(0, 5, 16)),
        A4("a4-3x7", 3, 7, 63.5m, 38.1m, 2.5m),
        A4("a4-3x8", 3, 8, 70m, 37m, 0m),
        A4("a4-2x7", 2, 7, 99.1m, 38.1m, 2.5m),
        A4("a4-5x13", 5, 13, 38.1m, 21.2m, 2.5m),
    ];

    /// <summary>The stock with a name; null if there is none.</summary>
    public static LabelStock? Find(string name) => All.FirstOrDefault(stock => stock.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    private static LabelStock Letter(string name, int columns, int rows, Length width, Length height, Length gap) => new()
    {
        Name = name,
        PaperWidth = Inches(8, 1, 2),
        PaperHeight = Inches(11),
        Columns = columns,
        Rows = rows,
        Width = width,
        Height = height,
        Gap = gap,
    };

    private static LabelStock A4(string name, int columns, int rows, decimal width, decimal height, decimal gap) => new()
    {
        Name = name,
        PaperWidth = Length.FromMillimetres(210),
        PaperHeight = Length.FromMillimetres(297),
        Columns = columns,
        Rows = rows,
        Width = Length.FromMillimetres(width),
        Height = Length.FromMillimetres(height),
        Gap = Length.FromMillimetres(gap),
    };

    private static Length Inches(long whole, long numerator = 0, long denominator = 1) => Length.FromInches(whole, numerator, denominator);

    private static Length Half(Length length) => Length.FromTicks(length.Ticks / 2);
}
