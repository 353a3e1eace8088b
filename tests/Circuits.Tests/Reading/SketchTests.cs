using Circuits.Model;
using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Reading;

public sealed class SketchTests
{
    private static readonly string File = TestFiles.Find("Reading/sketch.yaml");

    [Fact]
    public void The_sketch_of_the_language_is_read_without_findings()
    {
        var result = CircuitReader.ReadFile(File);
        Assert.Empty(result.Findings);
        Assert.NotNull(result.Unit);
    }

    [Fact]
    public void A_revision_keeps_what_it_does_not_change()
    {
        var body = CircuitReader.ReadFile(File).Unit!.FindPart("body")!;
        var (first, second) = (body.Revisions[0], body.Revisions[1]);
        Assert.Equal(["5", "6", "7"], first.Passages.Single(passage => passage.Name == "lube").Locations.Select(use => use.Location));
        Assert.Equal(["5"], second.Passages.Single(passage => passage.Name == "lube").Locations.Select(use => use.Location));
        Assert.Equal(first.Passages.Length + 1, second.Passages.Length);
        Assert.Equal(first.Valves.Single().Place, second.Valves.Single().Place);
    }

    [Fact]
    public void An_opening_of_a_later_revision_takes_the_place_of_those_at_its_locations()
    {
        var plate = CircuitReader.ReadFile(File).Unit!.FindPart("plate")!;
        Assert.Equal(["1", "11", "12", "7"], plate.Revisions[0].Openings.Select(opening => opening.At[0].Name));
        Assert.Equal(["1", "11", "12", "7", "6"], plate.Revisions[1].Openings.Select(opening => opening.At[0].Name));
        var hole = Assert.IsType<Shape.Hole>(plate.Revisions[1].Openings[3].Shape);
        Assert.Equal(3, hole.Diameter.Millimetres);
    }

    [Fact]
    public void The_same_change_of_two_revisions_is_laid_over_each()
    {
        const string Text = """
            format: 1
            unit: Small
            data: invented
            parts:
              body:
                kind: casting
                revisions:
                  1: {passages: {a: {}, b: {}}, valves: {x: {rest: [[a, b]], moved-by: [], travel: 1 mm}}}
                  2: {passages: {a: {}, b: {}}, valves: {x: {rest: [[a, b]], moved-by: [], travel: 2 mm}}}
                  3: {based-on: 1, valves: &change {x: {held-by: [{spring: 3 N}]}}}
                  4: {based-on: 2, valves: *change}
            gears:
              N: {apply: []}
            """;
        var body = CircuitReader.ReadText(Text, "unit.yaml").Unit!.FindPart("body")!;
        Assert.Equal([1, 2, 1, 2], body.Revisions.Select(revision => revision.Valves.Single().Travel!.Value.Millimetres));
        Assert.Equal([0, 0, 1, 1], body.Revisions.Select(revision => revision.Valves.Single().HeldBy.Length));
    }

    [Fact]
    public void What_a_revision_inherits_unchanged_is_the_same_element()
    {
        var body = CircuitReader.ReadFile(File).Unit!.FindPart("body")!;
        Assert.Same(body.Revisions[0].Valves.Single(), body.Revisions[1].Valves.Single());
        Assert.Same(body.Revisions[0].Passages[0], body.Revisions[1].Passages[0]);
        Assert.NotSame(body.Revisions[0].Passages[1], body.Revisions[1].Passages[1]);
    }
}
