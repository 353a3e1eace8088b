using System.Globalization;
using System.Text;

namespace Circuits.Benchmarks;

/// <summary>
/// A unit made by rule, for runs larger than any demo: ten parts of four revisions each, 1 048 576 assemblies, eight gears. Every revision
/// differs in something that oil feels: a hole, a slot, a rib, a spring, a ball, a polarity. Invented.
/// </summary>
internal static class GeneratedUnit
{
    private const int Clutches = 5;

    /// <summary>Its circuit file.</summary>
    public static string Text()
    {
        var text = new StringBuilder("""
            format: 1
            unit: Generated
            data: invented
            joints:
              main: {between: [upper, lower], sheets: [main-plate]}
              rear: {between: [lower, case-half], sheets: [rear-gasket, rear-plate]}
            pump: {into: upper.line}
            matched:
              first: {upper: 1, lower: 1, case-half: 1, main-plate: 1, rear-gasket: 1, rear-plate: 1, balls: 1, pack: 1, spools: 1, springs: 1}
              last: {upper: 4, lower: 4, case-half: 4, main-plate: 4, rear-gasket: 4, rear-plate: 4, balls: 4, pack: 4, spools: 4, springs: 4}
            clutches: {c1: {at: case-half.c1}, c2: {at: case-half.c2}, c3: {at: case-half.c3}, c4: {at: case-half.c4}, c5: {at: case-half.c5}}
            gears:
              P: {lever: P, apply: []}
              R: {lever: R, energize: [s2], apply: [c5, c4]}
              "N": {lever: "N", apply: []}
              1: {lever: D, apply: [c1, c3]}
              2: {lever: D, energize: [s1], apply: [c2, c3]}
              3: {lever: D, energize: [s1, s2], apply: [c2, c4]}
              4: {lever: D, energize: [s2], apply: [c1, c4]}
              L: {lever: L, apply: [c1, c3, c5]}
            parts:

            """.ReplaceLineEndings("\n"));
        Upper(text);
        Lower(text);
        Revisions(text, "case-half", "casting", "passages: {c1: {rear: 11}, c2: {rear: 12}, c3: {rear: 13}, c4: {rear: 14}, c5: {rear: 15}}", k =>
            $"leaks: [{{between: [c{k + 1}, exhaust], hole: {Mm(0.3 + (0.1 * k))}}}]");
        Revisions(text, "main-plate", "sheet", Holes("openings", 1, 5.0), k =>
            $"openings: [{{at: {k + 1}, hole: {Mm(1.6 + (0.3 * k))}}}{(k == 3 ? ", {at: [2, 8], slot: 2 x 12 mm}" : "")}]");
        Revisions(text, "rear-gasket", "sheet", "open-except: [31]", k => $"open-except: [{30 + k}{(k == 2 ? ", 14" : "")}]");
        Revisions(text, "rear-plate", "sheet", Holes("openings", 11, 4.0), k => $"openings: [{{at: {11 + k}, hole: {Mm(2.0 + (0.2 * k))}}}]");
        Revisions(text, "balls", "ball-set", "balls: {b1: {in: lower.c1, seats: [11], diameter: 7 mm}}", k =>
            $"balls: {{b{k + 1}: {{in: lower.c{k + 1}, seats: [{11 + k}], diameter: 7 mm}}}}");
        Revisions(text, "pack", "solenoid-pack", """
            solenoids: {s1: {feed: upper.pilot, out: upper.sig1, kind: switching, at-rest: low, port: 3 mm2}, s2: {feed: upper.pilot, out: upper.sig2, kind: switching, at-rest: low, port: 3 mm2}}
            """.Trim(), k => k < 3
            ? $"solenoids: {{s{(k % 2) + 1}: {{port: {k + 3}.5 mm2}}}}"
            : "solenoids: {s1: {at-rest: high}}");
        Revisions(text, "spools", "other", """
            valves: {v1: {rest: [{join: [upper.drive, upper.c1], area: 40 mm2}, {join: [upper.c2, exhaust], area: 40 mm2}], moved: [{join: [upper.drive, upper.c2], area: 40 mm2}, {join: [upper.c1, exhaust], area: 40 mm2}], moved-by: [{pressure: upper.sig1, area: 80 mm2}], held-by: [{spring: 20 N}]}, v2: {rest: [{join: [upper.drive, upper.c3], area: 40 mm2}, {join: [upper.c4, exhaust], area: 40 mm2}], moved: [{join: [upper.feed4, upper.c4], area: 40 mm2}, {join: [upper.c3, exhaust], area: 40 mm2}], moved-by: [{pressure: upper.sig2, area: 80 mm2}], held-by: [{spring: 20 N}]}}
            """.Trim(), k => $"valves: {{v{(k % 2) + 1}: {{held-by: [{{spring: {(k == 3 ? 60 : 20 + k)} N}}]}}}}");
        Revisions(text, "springs", "other", """
            regulators: {main: {holds: upper.line, spills-to: exhaust, spring: 800 kPa, port: 40 mm2}, low: {from: upper.line, out: upper.pilot, to: exhaust, spring: 500 kPa, port: 20 mm2}}
            """.Trim(), k => k switch
        {
            1 => "regulators: {main: {spring: 760 kPa}}",
            2 => "regulators: {low: {spring: 460 kPa}}",
            _ => "regulators: {main: {spring: 840 kPa}, low: {spring: 200 kPa}}",
        });
        return text.ToString();
    }

    private static void Upper(StringBuilder text) => Revisions(text, "upper", "casting", """
        passages: {line: {}, pilot: {}, sig1: {}, sig2: {}, drive: {main: 6}, reverse: {main: 7}, spare: {main: 8}, feed4: {}, c1: {main: 1}, c2: {main: 2}, c3: {main: 3}, c4: {main: 4}, c5: {main: 5}}, restrictions: [{between: [drive, feed4], hole: 6 mm}, {between: [reverse, feed4], hole: 6 mm}, {between: [reverse, c5], hole: 5 mm}], lever: {P: [{join: [drive, exhaust], area: 40 mm2}, {join: [reverse, exhaust], area: 40 mm2}], R: [{join: [line, reverse], area: 40 mm2}, {join: [drive, exhaust], area: 40 mm2}], "N": [{join: [drive, exhaust], area: 40 mm2}, {join: [reverse, exhaust], area: 40 mm2}], D: [{join: [line, drive], area: 40 mm2}, {join: [reverse, exhaust], area: 40 mm2}], L: [{join: [line, drive, c5], area: 40 mm2}, {join: [reverse, exhaust], area: 40 mm2}]}
        """.Trim(), k => $"leaks: [{{between: [{(k == 1 ? "drive" : k == 2 ? "pilot" : "c5")}, exhaust], hole: {Mm(0.4 + (0.1 * k))}}}]");

    private static void Lower(StringBuilder text) => Revisions(
        text, "lower", "casting",
        "passages: {c1: {main: 1, rear: 11}, c2: {main: 2, rear: 12}, c3: {main: 3, rear: 13}, c4: {main: 4, rear: 14}, c5: {main: 5, rear: 15}, spare: {main: 8}}",
        k => k == 3
            ? "passages: {c3: {rear: null}, c3-rear: {rear: 13}}, restrictions: [{between: [c3, c3-rear], hole: 3 mm}]"
            : $"restrictions: [{{between: [c{k}, exhaust], hole: {Mm(0.5)}}}]");

    private static string Holes(string key, int first, double millimetres) =>
        $"{key}: [{string.Join(", ", Enumerable.Range(first, Clutches).Select(at => $"{{at: {at}, hole: {Mm(millimetres)}}}"))}]";

    private static void Revisions(StringBuilder text, string name, string kind, string first, Func<int, string> other)
    {
        text.Append(CultureInfo.InvariantCulture, $"  {name}:\n    kind: {kind}\n    revisions:\n      1: {{{first}}}\n");
        for (var k = 1; k < 4; k++) text.Append(CultureInfo.InvariantCulture, $"      {k + 1}: {{based-on: 1, {other(k)}}}\n");
    }

    private static string Mm(double value) => value.ToString("0.0", CultureInfo.InvariantCulture) + " mm";
}
