using CsCheck;
using Offcuts.Documents;
using Xunit;

namespace Offcuts.Domain.Tests;

// Whatever is in a file, the readers give their value or one kind of exception, and the exception says where.
public class DocumentFuzzTests
{
    private static readonly string[] Sources =
        [.. Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "demo"), "*.yaml", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal).Select(File.ReadAllText)];

    private static readonly string[] Scraps =
        ["\n", " ", "\t", ":", ": ", "- ", "[", "]", "{", "}", ",", "\"", "'", "|", ">", "#", "&a ", "*a", "!!int ", "<<: ", "---\n", "%", "~", "null", "0", "-1", "1e9",
            "99999999999999999999", "name", "size", "parts", "\u0000", "\uFEFF", "\uD800", "½", "\\", "? ", "@", "`", "\r"];

    [Fact]
    public void Broken_documents_never_throw_anything_else()
    {
        var edit = Gen.Select(Gen.Double[0, 1], Gen.Int[0, 40], Gen.Int[0, Scraps.Length - 1]);
        Gen.Select(Gen.Int[0, Sources.Length - 1], edit.Array[1, 4]).Sample((source, edits) =>
        {
            var text = Sources[source];
            foreach (var (place, cut, scrap) in edits)
            {
                var at = (int)(place * text.Length);
                text = text[..at] + Scraps[scrap] + text[Math.Min(text.Length, at + cut)..];
            }

            return AllReadOrFault(text);
        }, iter: 3_000);
    }

    [Fact]
    public void Noise_never_throws_anything_else() =>
        Gen.OneOf(Gen.String, Gen.Int[0, Scraps.Length - 1].Select(index => Scraps[index]).Array[0, 30].Select(string.Concat))
            .Sample(AllReadOrFault, iter: 5_000);

    // Found by the tests above.
    [Theory]
    [InlineData("!![O")]
    [InlineData("name: !![")]
    [InlineData("name: !<http://[> x")]
    [InlineData("parts:\n- @")]
    public void Broken_tags_and_reserved_signs_are_faults(string text) => Assert.True(AllReadOrFault(text));

    private static bool AllReadOrFault(string text) =>
        ReadsOrFaults(() => DesignDocument.Parse(text, DisplayUnit.Inch, SpeciesCatalogue.Default))
        && ReadsOrFaults(() => PriceListDocument.Parse(text, DisplayUnit.Millimetre, SpeciesCatalogue.Default))
        && ReadsOrFaults(() => BoardListDocument.Parse(text, DisplayUnit.Inch, SpeciesCatalogue.Default));

    private static bool ReadsOrFaults(Func<object> read)
    {
        try
        {
            return read() is not null;
        }
        catch (OffcutsException problem)
        {
            return problem.Code == ErrorCode.Invalid && problem.Faults.Count > 0
                && problem.Faults.All(fault => fault.Pointer.StartsWith('#') && fault.Detail.Length > 0 && fault.Line is null or >= 1);
        }
    }
}
