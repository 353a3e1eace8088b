using Circuits.Model;
using Circuits.Rendering.Drawing.Joints;
using Circuits.Rendering.Drawing.Paper;
using Circuits.Studies.Drawing;

namespace Circuits.Cli;

/// <summary>Draws a joint as the command line asks for it.</summary>
internal static class JointWords
{
    /// <summary>Draws a joint: on one sheet, or on pages at 1:1.</summary>
    /// <param name="session">The run.</param>
    /// <param name="file">The circuit file, for messages.</param>
    /// <param name="assembly">The assembly.</param>
    /// <param name="joint">The joint's name.</param>
    /// <param name="over">The parts of the assembly that is laid over it; empty for none.</param>
    /// <param name="page">The paper, or null for one sheet.</param>
    /// <exception cref="UserError">There is no such joint or part.</exception>
    public static void Draw(Session session, string file, Assembly assembly, string joint, IReadOnlyList<string> over, PaperSize? page)
    {
        var unit = assembly.Unit;
        var found = unit.Joints.FirstOrDefault(known => known.Name == joint) ?? throw UserError.Unknown("joint", joint, [.. unit.Joints.Select(known => known.Name)], $" in {file}");
        var drawing = new JointDrawing(JointLook.Of(assembly, found, over.Count == 0 ? null : Over(assembly, file, over)), session.Text.Units);
        if (page is not { } paper)
        {
            session.Finish(SvgText.Of(to => drawing.Write(to)));
            return;
        }

        var pages = new JointPages(drawing, paper);
        if (pages.Count == 1) session.Finish(SvgText.Of(to => pages.Write(to, 0)));
        else session.Finish([.. Enumerable.Range(0, pages.Count).Select(i => (FormattableString.Invariant($"{i + 1}"), SvgText.Of(to => pages.Write(to, i))))]);
    }

    /// <summary>The same assembly, but for the parts named; or a matched set.</summary>
    private static Assembly Over(Assembly assembly, string file, IReadOnlyList<string> items)
    {
        if (items.Any(item => !item.Contains('=', StringComparison.Ordinal))) return FittedParts.Of(assembly.Unit, file, items);
        var revisions = assembly.Revisions.ToBuilder();
        foreach (var item in items)
        {
            var (part, revision) = FittedParts.Single(assembly.Unit, file, item);
            revisions[part] = revision;
        }

        return Assembly.Of(assembly.Unit, revisions.ToImmutable());
    }
}
