using Circuits.Model;
using Circuits.Reading;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>Units that are large to draw.</summary>
internal static class BigUnit
{
    /// <summary>A unit of twice so many passages, in a tree behind the pump.</summary>
    public static Unit Of(int passages)
    {
        var all = Enumerable.Range(0, passages).ToList();
        return CircuitReader.ReadText($$"""
            format: 1
            unit: Big
            data: invented
            joints: {face: {between: [body, housing], sheets: [plate]} }
            pump: {into: body.p0}
            parts:
              body:
                kind: casting
                passages: { {{string.Join(", ", all.Select(i => $"p{i}: {{face: {i + 1}}}"))}} }
                regulators: {main: {holds: p0, spills-to: exhaust, spring: 500 kPa} }
                restrictions: [ {{string.Join(", ", all.Skip(1).Select(i => $"{{between: [p{(i - 1) / 3}, p{i}], hole: 2 mm}}"))}} ]
              plate: {kind: sheet, openings: [ {{string.Join(", ", all.Select(i => $"{{at: {i + 1}, hole: 3 mm}}"))}} ]}
              housing:
                kind: casting
                passages: { {{string.Join(", ", all.Select(i => $"q{i}: {{face: {i + 1}}}"))}} }
            clutches: {c: {at: housing.q{{passages - 1}}, area: 5000 mm2} }
            gears: {1: {apply: [c]} }
            """, "unit.yaml").Unit!;
    }
}
