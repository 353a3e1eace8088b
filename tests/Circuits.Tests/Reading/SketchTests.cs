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
}
