using Circuits.Reading;
using Xunit;

namespace Circuits.Tests.Reading;

/// <summary>How large a tolerance may be: the least that a size can come out at must make sense for it too.</summary>
public sealed class ToleranceRangeTests
{
    [Theory]
    [InlineData("hole: 2 mm +- 1.9 mm", true)]
    [InlineData("hole: 2 mm +- 2 mm", false)]
    [InlineData("hole: 2 mm +- 2.1 mm", false)]
    [InlineData("hole: 2 mm +- 100 %", false)]
    [InlineData("hole: 2 mm +- 97 %", true)]
    [InlineData("hole: 2 mm +- 99 %", false)]
    [InlineData("hole: 2 mm +- 0 mm", true)]
    [InlineData("hole: 2 mm +- -0.1 mm", false)]
    [InlineData("area: 3 mm2 +- 3 mm2", false)]
    [InlineData("area: 3 mm2 +- 2.9 mm2", true)]
    public void A_hole_never_comes_out_at_nothing(string size, bool right) =>
        Held(right, $"restrictions: [{{between: [a, b], {size}}}]");

    [Theory]
    [InlineData("20 kPa +- 19 kPa", true)]
    [InlineData("20 kPa +- 20 kPa", true)]
    [InlineData("20 kPa +- 20.1 kPa", false)]
    public void A_spring_may_come_out_at_nothing_and_no_lower(string size, bool right) =>
        Held(right, $"regulators: {{limit: {{from: a, out: b, spring: {size}}}}}");

    private static void Held(bool right, string elements)
    {
        var read = CircuitReader.ReadText(
            $"format: 1\nunit: Case\ndata: invented\nparts:\n  body:\n    kind: casting\n    passages: {{a: {{}}, b: {{}}}}\n    {elements}\ngears: {{G: {{apply: []}}}}\n", "case.yaml");
        if (right) Assert.Empty(read.Findings);
        else Assert.Equal("size-out-of-range", Assert.Single(read.Findings).Rule);
    }
}
