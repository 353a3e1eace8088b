using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Rules;
using Circuits.Model;

namespace Circuits.Studies;

/// <summary>Which verdicts an edit of a unit's file changed: of its matched sets, and of the assemblies that its expectations speak of.</summary>
public static class VerdictChanges
{
    /// <summary>The differences, a finding each: matched sets first, then expectations, in the order of the file; what is gone last.</summary>
    /// <param name="unit">The unit as it is now.</param>
    /// <param name="before">What checking it came to before the edit.</param>
    /// <param name="now">What it comes to now.</param>
    /// <param name="since">What the state before the edit is called.</param>
    public static ImmutableArray<Finding> Of(Unit unit, CheckReport before, CheckReport now, string since)
    {
        var (was, becomes) = (All(before), All(now));
        var findings = new List<Finding>();
        foreach (var (set, rows) in becomes)
        {
            if (!was.TryGetValue(set, out var former))
            {
                var worst = rows.MaxBy(row => row.Gravity)!;
                findings.Add(At(worst, Phrase.Of($"{worst.What}: {worst.Word}; these parts were not checked at {since}")));
                continue;
            }

            foreach (var row in rows)
            {
                var other = former.Find(known => known.What == row.What);
                if (other is null) findings.Add(At(row, Phrase.Of($"{row.What}: {row.Word}, not there at {since}")));
                else if (other.Word != row.Word) findings.Add(At(row, Phrase.Of($"{row.What}: {other.Word} at {since}, now {row.Word}")));
            }

            foreach (var gone in former.Where(known => !rows.Exists(row => row.What == known.What)))
                findings.Add(VerdictChanged.Rule.At(unit.Place, $"{gone.What}: {gone.Word} at {since}, now gone") with { Assembly = rows[0].Assembly.Choice });
        }

        foreach (var set in was.Keys.Where(set => !becomes.ContainsKey(set)))
            findings.Add(VerdictChanged.Rule.At(unit.Place, $"{set}: checked at {since}, now gone"));
        return [.. findings];
    }

    /// <summary>A verdict.</summary>
    /// <param name="What">Of what: a gear's name, or a change of gear at a condition.</param>
    /// <param name="Word">The verdict.</param>
    /// <param name="Gravity">How grave it is, of a gear; below that of any gear, of a change of gear.</param>
    /// <param name="Assembly">The assembly.</param>
    /// <param name="Gear">The gear that it is about, or null.</param>
    /// <param name="Place">Where to look.</param>
    private sealed record Row(string What, string Word, int Gravity, Assembly Assembly, string? Gear, Place Place);

    private static Finding At(Row row, Phrase message) =>
        VerdictChanged.Rule.At(row.Place, message) with { Gear = row.Gear, Assembly = row.Assembly.Choice };

    // A matched set goes by its name, whatever parts it has come to be of: it is what the reader calls it.
    private static OrderedDictionary<string, List<Row>> All(CheckReport report)
    {
        var all = new OrderedDictionary<string, List<Row>>();
        foreach (var set in report.Matched)
        {
            var rows = RowsOf(set.Assembly.Matched is { } name ? $"matched set {name}" : Named(set.Assembly));
            foreach (var (gear, state) in set.Gears.Zip(set.Assembly.Unit.Gears))
                rows.Add(new Row(gear.Gear, VerdictText.Of(gear.Verdict), (int)gear.Verdict, set.Assembly, gear.Gear, state.Place));
            foreach (var change in set.Changes)
                rows.Add(new Row($"{change.Plan.Name} at {change.At.Name}", VerdictText.Of(change.Verdict), -1, set.Assembly, change.Plan.To.Name, change.Plan.To.Place));
        }

        foreach (var expected in report.Expectations.Where(expected => expected.Assembly.Matched is null))
        {
            var rows = RowsOf(Named(expected.Assembly));
            var gear = expected.Expectation.Gear?.Name;
            var what = gear ?? "the worst gear";
            if (!rows.Exists(row => row.What == what))
                rows.Add(new Row(what, VerdictText.Of(expected.Came), (int)expected.Came, expected.Assembly, gear, expected.Expectation.Place));
        }

        return all;

        List<Row> RowsOf(string set)
        {
            if (!all.TryGetValue(set, out var rows)) all.Add(set, rows = []);
            return rows;
        }
    }

    private static string Named(Assembly assembly) => string.Join(", ", assembly.Choice.Select(choice => $"{choice.Key}={choice.Value}"));
}
