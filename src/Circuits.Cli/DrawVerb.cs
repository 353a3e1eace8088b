using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering.Drawing;
using Circuits.Studies.Drawing;
using Circuits.Studies.Shifts;

namespace Circuits.Cli;

/// <summary><c>draw</c>: the circuit in a gear, or a joint with its sheets laid over the castings.</summary>
internal sealed class DrawVerb
{
    private const string All = "all";

    private readonly ChangeOptions changes;

    private readonly Option<string[]> gear = new("--gear")
    {
        HelpName = "gear | all",
        Description = "The gear to draw. Several, with commas, or all: one file each, -o circuit.svg makes circuit-R.svg and so on.",
    };

    private readonly Option<string?> fromTo = new("--from-to")
    {
        HelpName = "2-3",
        Description = "Draw the gear that is entered, with what differs from the gear that is left.",
    };

    private readonly Option<string?> joint = new("--joint")
    {
        HelpName = "joint",
        Description = "Draw this joint instead, to scale: the sheets laid over the passages of both castings.",
    };

    private readonly Option<string[]> over = new("--over")
    {
        HelpName = "part=revision | set",
        Description = "Lay another assembly over the joint, and tell what is added and what is removed. May be repeated; several go with commas.",
    };

    private readonly Option<string?> page = new("--page")
    {
        HelpName = "a4 | letter",
        Description = "The joint on paper at 1:1, for the real plate to be laid on. What takes several pages makes plate-1.svg, plate-2.svg and so on.",
    };

    private DrawVerb(CommonOptions options) => changes = new ChangeOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var verb = new DrawVerb(options);
        Completes.FromUnit(verb.gear, options.Files, unit => [.. unit.Gears.Select(gear => gear.Name), All]);
        Completes.FromUnit(verb.fromTo, options.Files, unit => ShiftPlans.Of(unit).Select(plan => plan.Name));
        Completes.FromUnit(verb.joint, options.Files, unit => unit.Joints.Select(joint => joint.Name));
        Completes.FromUnit(verb.over, options.Files, unit => TargetWords.Of(unit, "fit"));
        Completes.With(verb.page, "a4", "letter");
        return new Verb(
            "draw", "A drawing (SVG): the circuit in a gear, with the state of its oil, what differs from the matched set, and where foreign oil comes in; or a joint, "
                + "the sheets laid over the castings.",
            [options.Files, verb.gear, verb.fromTo, verb.joint, verb.over, verb.page, .. verb.changes.All, options.Output, options.Units],
            [
                "circuits draw unit.yaml --gear 3 -o circuit.svg", "circuits draw unit.yaml --fit plate=1 --gear all -o circuit.svg", "circuits draw unit.yaml --from-to 2-3 -o shift.svg",
                "circuits draw unit.yaml --joint front --over plate=2 -o plate.svg",
            ],
            verb.Run);
    }

    private int Run(Session session)
    {
        session.CheckOutput([.. changes.Files(session)]);
        if (session.Files is not [var file]) throw new UserError(UserError.Usage, "draw takes one circuit file at a time");
        PerUnit.RefuseFolder(file);
        var asked = changes.Read(session);
        CheckWords(session);
        if (session.Read(file) is not { } unit) return ExitCode.CouldNotRun;
        var assembly = ChangeOptions.After(unit, asked);
        if (session.Parsed.GetValue(joint) is { } asksFor) JointWords.Draw(session, file, assembly, asksFor, OptionWords.Items(session.Parsed.GetValue(over)), session.Parsed.GetValue(page));
        else if (session.Parsed.GetValue(fromTo) is { } shift) DrawShift(session, unit, assembly, ShiftWords.Plan(unit, file, shift, fromTo.Name));
        else DrawGears(session, assembly, Gears(session, unit, file));
        return ExitCode.Fine;
    }

    /// <summary>Refuses words that would do nothing.</summary>
    private void CheckWords(Session session)
    {
        var gears = OptionWords.Items(session.Parsed.GetValue(gear)).Count > 0;
        var shift = session.Parsed.GetValue(fromTo) is not null;
        if (session.Parsed.GetValue(joint) is not null)
        {
            if (gears || shift) throw new UserError(UserError.Usage, $"--joint draws castings and sheets, which no gear changes: leave {(gears ? gear.Name : fromTo.Name)} out");
        }
        else if (session.Parsed.GetValue(page) is not null || OptionWords.Items(session.Parsed.GetValue(over)).Count > 0)
        {
            throw new UserError(UserError.Usage, $"{(session.Parsed.GetValue(page) is not null ? page.Name : over.Name)} goes with --joint", "For example --joint front --over plate=2.");
        }
        else if (gears && shift)
        {
            throw new UserError(UserError.Usage, "--gear and --from-to both name what to draw", "Leave one of them out.");
        }
    }

    private static void DrawShift(Session session, Unit unit, Assembly assembly, ShiftPlan plan)
    {
        var views = AssemblyViews.Of(new UnitJudge(unit), assembly);
        var view = views.Change(unit.Gears.IndexOf(plan.From), unit.Gears.IndexOf(plan.To));
        session.Finish(Text(CircuitDrawing.Of([view], session.Text.Units), view));
    }

    private static void DrawGears(Session session, Assembly assembly, ImmutableArray<int> gears)
    {
        var views = AssemblyViews.Of(new UnitJudge(assembly.Unit), assembly);

        // Placed for all gears, whichever are drawn: then one gear's drawing can be laid over another's.
        var drawing = CircuitDrawing.Of(views.Gears, session.Text.Units);
        if (gears is [var only]) session.Finish(Text(drawing, views.Gears[only]));
        else session.Finish([.. gears.Select(index => (views.Gears[index].Gear, Text(drawing, views.Gears[index])))]);
    }

    private ImmutableArray<int> Gears(Session session, Unit unit, string file)
    {
        var known = unit.Gears.Select(each => each.Name).ToImmutableArray();
        if (known.IsEmpty) throw new UserError(UserError.Usage, $"{file} has no gears: there is no state to draw", "Give it gears.");
        var words = OptionWords.Items(session.Parsed.GetValue(gear));
        if (words is [All] && !known.Contains(All)) return [.. Enumerable.Range(0, known.Length)];
        foreach (var word in words)
        {
            if (!known.Contains(word)) throw UserError.Unknown("gear", word, known.Add(All), $" in {file}");
        }

        if (words.Count == 0 && known.Length > 1)
            throw new UserError(UserError.Usage, "draw needs --gear: the gear to draw", $"Gears of {file}: {string.Join(", ", known)}; or all, one file each.");
        return words.Count == 0 ? [0] : [.. Enumerable.Range(0, known.Length).Where(index => words.Contains(known[index]))];
    }

    private static string Text(CircuitDrawing drawing, GearView view)
    {
        var text = new StringWriter { NewLine = "\n" };
        drawing.Write(text, view);
        return text.ToString();
    }
}
