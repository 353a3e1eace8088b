using System.Collections.Immutable;
using Circuits.Judging;

namespace Circuits.Tests.Properties;

/// <summary>
/// What a unit's reports say, apart from the order and the places in which they say it: facts with a name and words, and
/// numbers with a name.
/// </summary>
internal sealed record Digest(ImmutableSortedDictionary<string, string> Facts, ImmutableSortedDictionary<string, double> Numbers)
{
    /// <summary>How near two numbers must be, as a fraction.</summary>
    private const double Near = 1e-6;

    /// <summary>Digests one assembly.</summary>
    /// <param name="report">Its report.</param>
    /// <param name="name">Turns the names of the unit into those to compare by.</param>
    /// <param name="keep">Whether a passage of that part is compared.</param>
    public static Digest Of(AssemblyReport report, Func<string, string> name, Func<string, bool> keep)
    {
        var facts = new Dictionary<string, string> { ["nearest"] = string.Join(' ', report.NearestMatched.Select(name).Order(StringComparer.Ordinal)) };
        var numbers = new Dictionary<string, double>();
        foreach (var gear in report.Gears)
        {
            var at = name(gear.Gear);
            facts[at] = $"{gear.Verdict} {gear.Settled} {gear.DependsOnHistory}";
            foreach (var clutch in gear.Clutches)
            {
                var clutchAt = $"{at} {name(clutch.Clutch)}";
                facts[clutchAt] = $"{clutch.State} {clutch.Verdict} {clutch.Charted}";
                numbers[clutchAt] = clutch.Kilopascals;
                numbers[$"{clutchAt} apply"] = clutch.Apply?.SquareMillimetres ?? 0;
                numbers[$"{clutchAt} release"] = clutch.Release?.SquareMillimetres ?? 0;
            }

            foreach (var passage in gear.Pressures.Where(passage => keep(passage.Passage)))
            {
                facts[$"{at} {name(passage.Passage)}"] = passage.State.ToString();
                numbers[$"{at} {name(passage.Passage)}"] = passage.Kilopascals;
            }

            foreach (var valve in gear.Positions.Where(position => position.Kind == PositionKind.Valve))
                facts[$"{at} valve {name(valve.Element)}"] = valve.Position.Words();
            var feeds = gear.CrossFeeds.Select(feed => $"{name(feed.From)}>{name(feed.Into)}").Distinct().Order(StringComparer.Ordinal);
            facts[$"{at} cross-feeds"] = string.Join(' ', feeds);
        }

        // How often a rule is found may change where one hole becomes two; whether it is found may not.
        facts["rules"] = string.Join(' ', report.Findings.Select(finding => finding.Rule).Distinct().Order(StringComparer.Ordinal));
        return new Digest(facts.ToImmutableSortedDictionary(StringComparer.Ordinal), numbers.ToImmutableSortedDictionary(StringComparer.Ordinal));
    }

    /// <summary>The first thing that differs, in words; null when nothing does.</summary>
    public string? Against(Digest other)
    {
        foreach (var (key, fact) in Facts)
        {
            var there = other.Facts.GetValueOrDefault(key, "nothing");
            if (there != fact) return $"{key.Split(' ').Length} words: {key} is {fact}, then {there}";
        }

        foreach (var (key, number) in Numbers)
        {
            var there = other.Numbers.GetValueOrDefault(key, double.NaN);
            if (!(number == there || Math.Abs(number - there) <= Near * Math.Max(1, Math.Abs(number)))) return $"number: {key} is {number}, then {there}";
        }

        return Facts.Count == other.Facts.Count ? null : "facts: others have come";
    }
}
