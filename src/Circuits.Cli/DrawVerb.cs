using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering.Drawing;
using Circuits.Studies.Drawing;
using Circuits.Studies.Shifts;

namespace Circuits.Cli;

/// <summary><c>draw</c>: the circuit in a gear.</summary>
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

    private DrawVerb(CommonOptions options) => changes = new ChangeOptions(options);

    public static Verb Create(CommonOptions options)
    {
        var verb = new DrawVerb(options);
        Completes.FromUnit(verb.gear, options.Files, unit => [.. unit.Gears.Select(gear => gear.Name), All]);
        Completes.FromUnit(verb.fromTo, options.Files, unit => ShiftPlans.Of(unit).Select(plan => plan.Name));
        return new Verb(
            "draw", "A drawing (SVG): the circuit in a gear, with the state of its oil, what differs from the matched set, and where foreign oil comes in.",
            [options.Files, verb.gear, verb.fromTo, .. verb.changes.All, options.Output, options.Units],
            ["circuits draw unit.yaml --gear 3 -o circuit.svg", "circuits draw unit.yaml --fit plate=1 --gear all -o circuit.svg", "circuits draw unit.yaml --from-to 2-3 -o shift.svg"],
            verb.Run);
    }

    private int Run(Session session)
    {
        session.CheckOutput([.. changes.Files(session)]);
        if (session.Files is not [var file]) throw new UserError(UserError.Usage, "draw takes one circuit file at a time");
        PerUnit.RefuseFolder(file);
        var asked = changes.Read(session);
        if (session.Read(file) is not { } unit) return ExitCode.CouldNotRun;
        var assembly = ChangeOptions.After(unit, asked);
        if (session.Parsed.GetValue(fromTo) is { } shift) DrawShift(session, unit, assembly, ShiftWords.Plan(unit, file, shift, fromTo.Name));
        else DrawGears(session, assembly, Gears(session, unit, file));
        return ExitCode.Fine;
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
