using Circuits.Model;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>What <c>hole: null</c> means in a list that a revision lays over another: it removes, unless the entry has another size.</summary>
public sealed class ListRemovalTests
{
    // With another size it is no removal but a hole that was left empty, and is told so; nothing goes without a word.
    [Theory]
    [InlineData("{at: 1, hole: null}", "", null)]
    [InlineData("{at: 1, hole: null, slot: 4 x 14 mm}", "slot", "empty-value")]
    [InlineData("{at: 1, hole: null, area: 2 mm2}", "area", "empty-value")]
    [InlineData("{at: 1, slot: 4 x 14 mm}", "slot", null)]
    public void An_opening(string entry, string left, string? fault) =>
        Held("sheet", "openings: [{at: 1, hole: 3 mm}]", $"openings: [{entry}]", left, fault);

    [Theory]
    [InlineData("{between: [a, b], hole: null}", "", null)]
    [InlineData("{between: [b, a], hole: null}", "", null)]
    [InlineData("{between: [subject.b, a], hole: null}", "", null)]
    [InlineData("{between: [a, b], hole: null, area: 2 mm2}", "area", "empty-value")]
    [InlineData("{between: [a, b], hole: null, slot: 4 x 14 mm}", "slot", "empty-value")]
    [InlineData("{between: [a, b], area: 2 mm2}", "area", null)]
    public void A_restriction_or_a_leak(string entry, string left, string? fault)
    {
        foreach (var list in (string[])["restrictions", "leaks"])
            Held("casting", $"passages: {{a: {{}}, b: {{}}}}, {list}: [{{between: [a, b], hole: 3 mm}}]", $"{list}: [{entry}]", left, fault);
    }

    private static void Held(string kind, string below, string above, string left, string? fault)
    {
        var read = CircuitReader.ReadText(
            "format: 1\nunit: Case\ndata: invented\njoints: {face: {between: [one, two], sheets: [" + (kind == "sheet" ? "subject" : "") + "]}}\nparts:\n"
            + "  one: {kind: casting, passages: {a: {face: 1}}}\n  two: {kind: casting, passages: {b: {face: 1}}}\n"
            + "  subject: {kind: " + kind + ", revisions: {1: {" + below + "}, 2: {based-on: 1, " + above + "}}}\ngears: {G: {apply: []}}\n", "case.yaml");
        if (fault is not null)
        {
            Assert.Contains(fault, read.Findings.Select(finding => finding.Rule));
            return;
        }

        Assert.Empty(read.Findings);
        var revision = read.Unit!.FindPart("subject")!.FindRevision("2")!;
        Assert.Equal(left, string.Join(' ', revision.Openings.Select(opening => Name(opening.Shape))
            .Concat(revision.Restrictions.Select(each => Name(each.Shape))).Concat(revision.Leaks.Select(each => Name(each.Shape)))));
    }

    private static string Name(Shape? shape) => shape switch
    {
        Shape.Hole => "hole",
        Shape.Slot => "slot",
        Shape.Cutout => "area",
        _ => "?",
    };
}
