using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Rendering.Drawing;
using Circuits.Rendering.Drawing.Paper;
using Circuits.Studies.Drawing;

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
        Description = "On paper: a circuit as large as its lettering needs, a joint at 1:1 for the real plate to be laid on. What takes several pages makes circuit-1.svg, circuit-2.svg and so on.",
    };

    private DrawVerb(CommonOptions options) => changes = new ChangeOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var verb = new DrawVerb(options);
        Completes.FromUnit(verb.gear, options.Files, unit => [.. unit.Gears.Select(gear => gear.Name), All]);
        Completes.FromUnit(verb.fromTo, options.Files, unit => ShiftPlans.Of(unit).Select(plan => plan.Name));
        Completes.FromUnit(verb.joint, options.Files, unit => unit.Joints.Select(joint => joint.Name));
        Completes.FromUnit(verb.over, options.Files, unit => TargetWords.Of(unit, "fit"));
        Completes.With(verb.page, [.. PaperSize.All.Select(paper => paper.Word)]);
        return new Verb(
            "draw", "A drawing (SVG): the circuit in a gear, with the state of its oil, what differs from the matched set, and where foreign oil comes in; or a joint, "
                + "the sheets laid over the castings.",
            [options.Files, verb.gear, verb.fromTo, verb.joint, verb.over, verb.page, .. verb.changes.All, options.Quick, options.Output, options.Units],
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
        PerUnit.RefuseFolder(session, file);
        var asked = changes.Read(session);
        CheckWords(session);
        var paper = Paper(session);
        if (session.Read(file) is not { } unit) return ExitCode.CouldNotRun;
        var assembly = ChangeOptions.After(unit, asked);
        if (session.Parsed.GetValue(joint) is { } asksFor) JointWords.Draw(session, file, assembly, asksFor, OptionWords.Items(session.Parsed.GetValue(over)), paper);
        else if (session.Parsed.GetValue(fromTo) is { } shift) DrawShift(session, unit, assembly, ShiftWords.Plan(unit, file, shift, fromTo.Name), paper);
        else DrawGears(session, assembly, Gears(session, unit, file), paper);
        return ExitCode.Fine;
    }

    /// <summary>Refuses words that would do nothing.</summary>
    private void CheckWords(Session session)
    {
        var gears = OptionWords.Items(session.Parsed.GetValue(gear)).Length > 0;
        var shift = session.Parsed.GetValue(fromTo) is not null;
        if (session.Parsed.GetValue(joint) is not null)
        {
            if (gears || shift) throw new UserError(UserError.Usage, $"--joint draws castings and sheets, which no gear changes: leave {(gears ? gear.Name : fromTo.Name)} out");
        }
        else if (OptionWords.Items(session.Parsed.GetValue(over)).Length > 0)
        {
            throw new UserError(UserError.Usage, $"{over.Name} goes with --joint", "For example --joint front --over plate=2.");
        }
        else if (gears && shift)
        {
            throw new UserError(UserError.Usage, "--gear and --from-to both name what to draw", "Leave one of them out.");
        }
    }

    private PaperSize? Paper(Session session)
    {
        if (session.Parsed.GetValue(page) is not { } word) return null;
        foreach (var paper in PaperSize.All)
        {
            if (paper.Word == word) return paper;
        }

        throw UserError.Unknown("paper", word, [.. PaperSize.All.Select(paper => paper.Word)]);
    }

    private static void DrawShift(Session session, Unit unit, Assembly assembly, ShiftPlan plan, PaperSize? paper)
    {
        var views = AssemblyViews.Of(new UnitJudge(unit, session.Mode), assembly);
        var view = views.Change(unit.Gears.IndexOf(plan.From), unit.Gears.IndexOf(plan.To));
        Finish(session, [("", CircuitDrawing.Of([view], session.Text.Units), view)], paper);
    }

    private static void DrawGears(Session session, Assembly assembly, ImmutableArray<int> gears, PaperSize? paper)
    {
        var views = AssemblyViews.Of(new UnitJudge(assembly.Unit, session.Mode), assembly);

        // Placed for all gears, whichever are drawn: then one gear's drawing can be laid over another's.
        var drawing = CircuitDrawing.Of(views.Gears, session.Text.Units);
        Finish(session, [.. gears.Select(index => (gears.Length == 1 ? "" : views.Gears[index].Gear, drawing, views.Gears[index]))], paper);
    }

    /// <summary>Writes drawings, each whole or on pages; several files are told apart by the drawing's name and the page's number.</summary>
    private static void Finish(Session session, ImmutableArray<(string Name, CircuitDrawing Drawing, GearView View)> drawings, PaperSize? paper)
    {
        var files = ImmutableArray.CreateBuilder<(string Name, string Text)>();
        foreach (var (name, drawing, view) in drawings)
        {
            if (paper is not { } size)
            {
                files.Add((name, SvgText.Of(to => drawing.Write(to, view))));
                continue;
            }

            var pages = new CircuitPages(drawing, view, size);
            for (var i = 0; i < pages.Count; i++)
            {
                var number = pages.Count == 1 ? "" : FormattableString.Invariant($"{i + 1}");
                files.Add((name.Length == 0 || number.Length == 0 ? name + number : $"{name}-{number}", SvgText.Of(to => pages.Write(to, i))));
            }
        }

        if (files is [("", var only)]) session.Finish(only);
        else session.Finish(files.ToImmutable());
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

        if (words.Length == 0 && known.Length > 1)
            throw new UserError(UserError.Usage, "draw needs --gear: the gear to draw", $"Gears of {file}: {string.Join(", ", known)}; or all, one file each.");
        return words.Length == 0 ? [0] : [.. Enumerable.Range(0, known.Length).Where(index => words.Contains(known[index]))];
    }
}
