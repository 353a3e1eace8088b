using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Studies;

namespace Circuits.Cli;

/// <summary><c>what-if</c>: one assembly with changes, and what they make different.</summary>
internal static class WhatIfVerb
{
    public static Verb Create(CommonOptions options)
    {
        var changes = new ChangeOptions(options);
        return new Verb(
            "what-if", "The same assembly with changes: other parts, holes, plugs, balls, faults. Shows only what differs from before.",
            [options.Files, .. changes.All, options.FindingsFormat, options.Output, options.Units],
            [
                "circuits what-if unit.yaml --fit plate=2", "circuits what-if unit.yaml --from late --hole plate@21=2.0mm --drop two-way",
                "circuits what-if unit.yaml --changes job.yaml",
            ],
            session => Run(session, changes));
    }

    private static int Run(Session session, ChangeOptions options)
    {
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
        var judge = new UnitJudge(unit);
        var report = WhatIf.Of(judge, before, resolved.Assembly!, resolved.Changes);
        return new UnitAnswer(
            () => WhatIfText.Of(report, asked.Job, session.Text),
            json => WhatIfJson.Write(json, report, asked.Job),
            [.. judge.GearsetFaults, .. report.After.Findings])
        {
            Cases = TestedCases.Of(report.After),
        };
    }
}
