using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies;
using Circuits.Studies.Changes;

namespace Circuits.Cli;

/// <summary><c>what-if</c>: one assembly with changes, and what they make different.</summary>
internal static class WhatIfVerb
{
    public static Verb Create(CommonOptions options)
    {
        var changes = new ChangeOptions(options);
        var each = new Option<string?>("--each")
        {
            HelpName = "FILE",
            Description = "Many sets of changes, each with a name, a row each with the verdicts of gears and of changes of gear, as text or --format jsonl.",
        };
        return new Verb(
            "what-if", "The same assembly with changes: other parts, holes, plugs, balls, faults. Shows only what differs from before.",
            [options.Files, .. changes.All, each, options.Quick, Format(), options.Output, options.Units],
            [
                "circuits what-if unit.yaml --fit plate=2", "circuits what-if unit.yaml --from late --hole plate@21=2.0mm --drop two-way",
                "circuits what-if unit.yaml --changes job.yaml", "circuits what-if unit.yaml --each jobs.yaml --format jsonl",
            ],
            session => session.Parsed.GetValue(each) is { } file ? Many(session, changes, file) : Run(session, changes));
    }

    private static FormatOption Format() => new(
        OutputFormat.Text, OutputFormat.Json, OutputFormat.Jsonl, OutputFormat.Sarif, OutputFormat.JUnit, OutputFormat.Annotations);

    private static int Many(Session session, ChangeOptions options, string jobs)
    {
        session.CheckOutput([jobs]);
        if (session.Files is not [var file]) throw new UserError(UserError.Usage, "--each takes one circuit file at a time");
        if (session.Format is not (OutputFormat.Text or OutputFormat.Jsonl)) throw new UserError(UserError.Usage, "--each writes rows, as text or --format jsonl", "Add --format jsonl.");
        PerUnit.RefuseFolder(session, file);
        var (sets, findings) = ChangeSetReader.ReadEach(jobs, session.Inputs);
        if (sets.IsDefault) throw UserError.Of(findings);
        session.Diagnose(findings);
        var common = options.Read(session);
        if (session.Read(file) is not { } unit) return ExitCode.CouldNotRun;
        var faults = new List<Finding>();
        var asked = ImmutableArray.CreateBuilder<(string, Assembly)>(sets.Length);
        foreach (var (name, set) in sets)
        {
            var whole = new ChangeSet([.. common.Changes, .. set.Changes]) { From = [.. common.From, .. set.From] };
            var resolved = ChangeResolver.Resolve(ChangeOptions.Base(unit, whole), whole.Changes);
            faults.AddRange(resolved.Faults);
            if (resolved.Assembly is { } assembly) asked.Add((name, assembly));
        }

        if (faults.Count > 0) throw UserError.Of(faults);
        var isGood = true;
        session.Stream(write =>
        {
            using var progress = session.Progress(asked.Count, "jobs", streams: session.Format == OutputFormat.Jsonl);
            var rows = ImmutableArray.CreateBuilder<ManyRow>(asked.Count);
            foreach (var row in ManyChanges.Run(unit, session.Mode, asked.ToImmutable(), Environment.ProcessorCount, session.Interrupted))
            {
                session.StopIfInterrupted();
                if (session.Format == OutputFormat.Jsonl) write(Documents.Line(row, session.Mode));
                rows.Add(row);
                isGood &= row.IsGood;
                progress.Show(rows.Count);
            }

            if (session.Format == OutputFormat.Text) write(ManyRowsText.Of(unit, session.Mode, new UnitJudge(unit, session.Mode).Points, rows.ToImmutable(), session.Text));
        });
        return isGood ? ExitCode.Fine : ExitCode.Findings;
    }

    private static int Run(Session session, ChangeOptions options)
    {
        if (session.Format == OutputFormat.Jsonl) throw new UserError(UserError.Usage, "--format jsonl is for --each", "Add --each jobs.yaml, or write --format json.");
        session.CheckOutput([.. options.Files(session)]);
        var asked = options.Read(session);
        if (asked.Changes.IsEmpty)
            throw new UserError(UserError.Usage, "what-if needs a change", "For example --fit plate=2, --plug plate@22 or --changes job.yaml; see circuits what-if --help");
        return PerUnit.Run(session, (unit, _) => Ask(session, unit, asked));
    }

    private static UnitAnswer Ask(Session session, Unit unit, ChangeSet asked)
    {
        var before = ChangeOptions.Base(unit, asked);
        var resolved = ChangeOptions.Resolve(before, asked.Changes);
        var judge = new UnitJudge(unit, session.Mode);
        var report = WhatIf.Of(judge, before, resolved.Assembly!, resolved.Changes);
        return new UnitAnswer(
            () => WhatIfText.Of(report, asked.Job, session.Text),
            () => Documents.Of(report, asked.Job),
            [.. judge.GearsetFaults, .. report.After.Findings])
        {
            Cases = TestedCases.Of(report.After),
        };
    }
}
