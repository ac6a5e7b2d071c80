namespace Offcuts.Domain;

/// <summary>How much of everything the product takes: far above a workshop's needs, low enough that nothing runs away.</summary>
public static class Limits
{
    /// <summary>Most pieces of one kind: of a board, a part, a panel, an item, an offer.</summary>
    public const int MaxQuantity = 10_000;

    /// <summary>Most spare blanks of one part.</summary>
    public const int MaxSpares = 100;

    /// <summary>Most parts, panels, groups and items in a design, and most boards in a list.</summary>
    public const int MaxEntries = 2_000;

    /// <summary>Most offers in one price list.</summary>
    public const int MaxOffers = 1_000;

    /// <summary>Most widths, and most lengths, in which one offer comes.</summary>
    public const int MaxSizes = 100;

    /// <summary>Most price steps of one offer.</summary>
    public const int MaxSteps = 10;

    /// <summary>Most defects recorded on one board.</summary>
    public const int MaxDefects = 100;

    /// <summary>Most kinds of defects that one part or panel tolerates.</summary>
    public const int MaxTolerated = 20;

    /// <summary>Most tags of a design.</summary>
    public const int MaxTags = 20;

    /// <summary>Most hours of work that a design may state: some five years.</summary>
    public const int MaxHours = 10_000;

    /// <summary>Most layers of a face-glued part.</summary>
    public const int MaxLayers = 8;

    /// <summary>Longest name, in characters.</summary>
    public const int MaxName = 80;

    /// <summary>Longest place or source, in characters.</summary>
    public const int MaxLine = 200;

    /// <summary>Longest note or description, in characters.</summary>
    public const int MaxNote = 2_000;

    /// <summary>Most species or classes that one part, panel or group names.</summary>
    public const int MaxSpecies = 100;

    /// <summary>Most parameters and values that follow from them in one design.</summary>
    public const int MaxParameters = 20;

    /// <summary>Most values of one parameter.</summary>
    public const int MaxParameterValues = 10_000;

    /// <summary>Most choices in one design.</summary>
    public const int MaxChoices = 12;

    /// <summary>Most answers to one choice.</summary>
    public const int MaxAnswers = 12;
}
