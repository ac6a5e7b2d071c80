using System.Globalization;

namespace Offcuts.Domain;

/// <summary>Makes the board of what a line says, or says what stands against it.</summary>
internal sealed class DraftBoard(SpeciesCatalogue catalogue, DisplayUnit bareUnit)
{
    /// <summary>The reading of a whole line.</summary>
    public QuickReading Finish(LineScanner line, LineDraft draft, QuickCarry before)
    {
        var carry = new QuickCarry(
            draft.Species?.Id ?? before.Species,
            draft.Place is { } place ? Given(place) : before.Place,
            draft.Batch is { } batch ? Given(batch) : before.Batch);
        if (draft.IsSound && !draft.NamesBoard)
        {
            CheckNames(draft, carry);
            return draft.IsSound ? new() { Carry = carry, Understood = $"from here on: {Said(carry)}" } : Refused();
        }

        // What is missing is told where the rest is understood: it may stand in what is not.
        var board = draft.IsSound ? Board(line, draft, carry) : null;
        return board is var (made, nominal) && draft.IsSound
            ? new() { Board = made, Carry = carry, Understood = BoardSentence.Of(made, catalogue.NameOf(made.Species), nominal, bareUnit) }
            : Refused();

        QuickReading Refused() => new() { Carry = before, Faults = draft.Faults };
    }

    private (NewBoard Board, string? Nominal)? Board(LineScanner line, LineDraft draft, QuickCarry carry)
    {
        var species = carry.Species is { } id ? catalogue.Find(id) : null;
        if (species is null)
        {
            draft.Fault(line.Text.Length, "The species is missing, and no line before names one: write for instance ash.");
        }

        if (SizeOfNumbers.BySide(draft, line.Text.Length) is not { } sides || species is null)
        {
            return null;
        }

        var (size, nominal) = SizeOfNumbers.Read(sides, species, bareUnit, draft);
        if (!draft.IsSound)
        {
            return null;
        }

        var kind = species.Kind ?? BoardKind.Solid;
        var surface = draft.Surface ?? (kind == BoardKind.Sheet || nominal is not null ? Surface.Surfaced : Surface.Rough);
        if (NominalSizes.QuartersFault(sides[0].Text, surface) is { } fault)
        {
            draft.Fault(sides[0].At, fault);
        }

        var board = new NewBoard
        {
            Kind = kind,
            Species = species.Id,
            Size = size,
            Estimates = SizeOfNumbers.Estimates(sides, draft.IsEstimate),
            Quantity = draft.Quantity ?? 1,
            Surface = surface,
            Appearance = draft.Appearance ?? Appearance.Clear,
            Warp = Warp(draft),
            Ends = new(draft.Ends.Left ?? EndState.Unknown, draft.Ends.Right ?? EndState.Unknown),
            Defects = Defects(draft, size),
            Moisture = draft.Moisture,
            Batch = carry.Batch,
            Place = carry.Place,
            Source = draft.Source,
            Note = draft.Note,
        };
        if (draft.IsSound)
        {
            Check(board, draft);
        }

        if (draft.IsSound && kind == BoardKind.Solid && SizeOfNumbers.IsOtherwiseOrdered(sides) && size.Width > size.Length)
        {
            draft.Fault(sides[1].At, $"Which is the length? In the house's order this would be {sides[1].Text} wide and {sides[2].Text} long. Write {sides[0].Text} x {sides[2].Text} x {sides[1].Text}, or say which is which: {sides[1].Text} wide x {sides[2].Text} long x {sides[0].Text}.");
        }

        return (board, nominal);
    }

    private Warp Warp(LineDraft draft)
    {
        var warp = default(Warp);
        foreach (var (kind, text) in draft.Warp)
        {
            if (!LengthText.TryParse(text, bareUnit, zeroAllowed: true, out var size, out var error))
            {
                draft.Fault(draft.PlaceOf(kind), error);
                continue;
            }

            warp = kind switch
            {
                "bow" => warp with { Bow = size },
                "crook" => warp with { Crook = size },
                "cup" => warp with { Cup = size },
                _ => warp with { Twist = size },
            };
        }

        return warp;
    }

    private List<Defect> Defects(LineDraft draft, Dimensions size)
    {
        var defects = new List<Defect>();
        foreach (var phrase in draft.Defects)
        {
            foreach (var text in phrase.Texts)
            {
                if (DefectText.TryParse(text, size, bareUnit, out var defect, out var error))
                {
                    defects.Add(defect);
                }
                else
                {
                    draft.Fault(phrase.At, error);
                }
            }
        }

        return defects;
    }

    // The rules of the domain point into the board; the line has its phrases.
    private static void Check(NewBoard board, LineDraft draft)
    {
        var defects = draft.Defects.SelectMany(phrase => phrase.Texts.Select(_ => phrase.At)).ToList();
        foreach (var fault in BoardRules.Check(board))
        {
            var path = fault.Pointer.TrimStart('#', '/').Split('/');
            draft.Fault(
                path is ["defects", var index] ? defects[int.Parse(index, CultureInfo.InvariantCulture)]
                : defects.Count > Limits.MaxDefects ? defects[Limits.MaxDefects]
                : draft.PlaceOf(path[0] == "warp" && draft.Warp.Count > 0 ? draft.Warp.Keys.First() : path[0]),
                fault.Detail);
        }
    }

    private static void CheckNames(LineDraft draft, QuickCarry carry)
    {
        var faults = new FaultList();
        faults.Text("place", carry.Place, Limits.MaxLine);
        faults.Text("batch", carry.Batch, Limits.MaxName);
        foreach (var fault in faults.Found)
        {
            draft.Fault(draft.PlaceOf(fault.Pointer), fault.Detail);
        }
    }

    private static string? Given(string text) => text.Length == 0 ? null : text;

    private string Said(QuickCarry carry) => string.Join(", ", new[]
    {
        carry.Species is { } species ? catalogue.NameOf(species) : "no species",
        carry.Batch is { } batch ? $"batch {batch}" : "no batch",
        carry.Place is { } place ? $"place {place}" : "no place",
    });
}
