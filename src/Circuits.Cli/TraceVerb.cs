using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;

namespace Circuits.Cli;

/// <summary><c>trace</c>: why a clutch or passage has, or lacks, pressure.</summary>
internal static class TraceVerb
{
    public static Verb Create(CommonOptions options)
    {
        var of = new Option<string[]>("--of")
        {
            HelpName = "clutch | passage",
            Description = "What to trace: a clutch, a passage as part.passage, or a passage's own name where only one part has it. "
                + "May be repeated; several go with commas.",
        };
        Completes.FromUnit(of, options.Files, unit =>
        [
            .. unit.Clutches.Select(clutch => clutch.Name),
            .. unit.Parts.SelectMany(part => part.Revisions.SelectMany(revision => revision.Passages.Select(passage => $"{part.Name}.{passage.Name}"))).Distinct(),
        ]);
        return new Verb(
            "trace", "Why a clutch or passage has, or lacks, pressure in a gear: the tree of reasons, with the line of each.",
            [options.Files, of, options.Fit, options.Gear, options.Quick, options.Format, options.Output, options.Units],
            ["circuits trace unit.yaml --of direct --gear R", "circuits trace unit.yaml --fit plate=1 --of body.signal-2 --gear 3"],
            session => PerUnit.Run(session, (unit, file) => Ask(session, unit, file, OptionWords.Items(session.Parsed.GetValue(of)))));
    }

    private static UnitAnswer Ask(Session session, Unit unit, string file, IReadOnlyList<string> names)
    {
        var clutches = unit.Clutches.Select(clutch => clutch.Name).ToList();
        if (names.Count == 0)
        {
            throw new UserError(
                UserError.Usage, "trace needs --of: the clutch or passage to explain",
                $"Clutches of {file}: {string.Join(", ", clutches)}. A passage is named part.passage.");
        }

        var assembly = FittedParts.Of(unit, file, session.Fit);
        var gears = PerUnit.Gears(session, unit, file);
        var traced = names.Select(name => Resolve(unit, file, name)).ToList();
        var judge = new UnitJudge(unit, session.Mode);
        var nearest = judge.Report(assembly, timed: false).NearestMatched;
        ImmutableArray<Trace> traces = [.. gears.SelectMany(gear => traced.Select(name => Trace(judge, assembly, gear, name)))];
        return new UnitAnswer(
            () => TraceText.Of(assembly, nearest, traces, session.Text),
            () => Documents.Of(assembly, nearest, traces),
            Findings: []);
    }

    private static Trace Trace(UnitJudge judge, Assembly assembly, string gear, string name)
    {
        try
        {
            return judge.Trace(assembly, gear, name);
        }
        catch (ArgumentException)
        {
            throw new UserError(
                UserError.Usage, $"this assembly has no {name}: {Words.Of(assembly)}", "Another revision has it; choose parts with --fit.");
        }
    }

    private static string Resolve(Unit unit, string file, string name)
    {
        if (unit.Clutches.Any(clutch => clutch.Name == name)) return name;
        var passages = unit.Parts
            .SelectMany(part => part.Revisions.SelectMany(revision => revision.Passages.Select(passage => new PassageName(part.Name, passage.Name))))
            .Distinct().ToList();
        if (passages.Any(passage => passage.ToString() == name)) return name;
        var bare = passages.Where(passage => passage.Passage == name).ToList();
        if (bare.Count == 1) return bare[0].ToString();
        if (bare.Count > 1)
        {
            throw new UserError(
                UserError.Usage, $"several parts have a passage '{name}' in {file}", $"Name one: {string.Join(", ", bare)}.");
        }

        var known = unit.Clutches.Select(clutch => clutch.Name).Concat(passages.Select(passage => passage.ToString()))
            .Concat(passages.Select(passage => passage.Passage)).Distinct().ToList();
        var close = DidYouMean.Find(name, known);
        throw new UserError(
            UserError.Usage, $"unknown clutch or passage '{name}' in {file}",
            close is not null ? $"Did you mean {close}?"
                : $"Clutches: {string.Join(", ", unit.Clutches.Select(clutch => clutch.Name))}. A passage is named part.passage.");
    }
}
