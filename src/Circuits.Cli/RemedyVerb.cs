using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies.Remedies;

namespace Circuits.Cli;

/// <summary><c>remedy</c>: what would make a bad assembly right.</summary>
internal static class RemedyVerb
{
    public static Verb Create(CommonOptions options)
    {
        var have = new Option<string[]>("--have")
        {
            HelpName = "part=revision | set",
            Description = "The revisions at hand, or all of a matched set, besides what is fitted; without it, every revision. May be repeated; several go with commas.",
        };
        Completes.FromUnit(have, options.Files, unit => TargetWords.Of(unit, "fit"));
        var pairs = new Option<string?>("--pairs")
        {
            HelpName = "number",
            Description = $"Most pairs of work on the bench that are tried; {new RemedyOptions().MostPairs} unless given, 0 for none.",
        };
        return new Verb(
            "remedy", "What would make a bad assembly right: the fewest other parts, or a plug, a hole, a ball, up to two at once. Every offer is solved in every gear.",
            [options.Files, options.Fit, have, pairs, options.Quick, options.FindingsFormat, options.Output, options.Units],
            ["circuits remedy unit.yaml --fit plate=2", "circuits remedy unit.yaml --fit late,plate=1 --have plate=2,plate=3"],
            session => PerUnit.Run(session, (unit, file) => Ask(session, unit, file, OptionWords.Items(session.Parsed.GetValue(have)), session.Parsed.GetValue(pairs))));
    }

    private static UnitAnswer Ask(Session session, Unit unit, string file, IReadOnlyList<string> have, string? pairs)
    {
        var assembly = FittedParts.Of(unit, file, session.Fit);
        var options = new RemedyOptions();
        if (have.Count > 0) options = options with { AtHand = AtHand(unit, file, have) };
        if (pairs is not null) options = options with { MostPairs = Pairs(pairs) };
        var judge = new UnitJudge(unit, session.Mode);
        using var progress = session.SearchProgress("assemblies solved");
        var report = RemedySearch.Run(judge, assembly, options with { Progress = progress.Show }, session.Interrupted);
        return new UnitAnswer(
            () => RemedyText.Of(report, have.Count > 0 ? string.Join(", ", have) : null, session.Text),
            () => Documents.Of(report),
            [.. judge.GearsetFaults, .. report.Before.Findings])
        {
            Cases = TestedCases.Of(report.Before),
        };
    }

    private static ImmutableArray<ImmutableArray<Revision>> AtHand(Unit unit, string file, IReadOnlyList<string> items)
    {
        var revisions = unit.Parts.Select(_ => new List<Revision>()).ToList();
        foreach (var item in items)
        {
            var at = item.IndexOf('=', StringComparison.Ordinal);
            if (at < 0)
            {
                var set = FittedParts.Of(unit, file, [item]);
                for (var i = 0; i < revisions.Count; i++) revisions[i].Add(set.Revisions[i]);
                continue;
            }

            var part = unit.FindPart(item[..at]) ?? throw UserError.Unknown("part", item[..at], [.. unit.Parts.Select(known => known.Name)], $" in {file}");
            revisions[unit.Parts.IndexOf(part)].Add(part.FindRevision(item[(at + 1)..])
                ?? throw UserError.Unknown($"revision of {part.Name}", item[(at + 1)..], [.. part.Revisions.Select(known => known.Name)], $" in {file}"));
        }

        return [.. revisions.Select(list => list.DistinctBy(revision => revision.Name).ToImmutableArray())];
    }

    private static int Pairs(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count <= 10_000_000
        ? count
        : throw new UserError(UserError.Usage, $"--pairs must be a whole number from 0 to 10000000, found '{text}'");
}
