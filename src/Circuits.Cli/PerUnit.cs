using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Circuits.Model;

namespace Circuits.Cli;

/// <summary>What a verb found out about one unit.</summary>
/// <param name="Text">Makes the page for people.</param>
/// <param name="Json">Writes the document for programs.</param>
/// <param name="HasErrors">Whether there are findings of error level.</param>
internal sealed record UnitAnswer(Func<string> Text, Action<Utf8JsonWriter> Json, bool HasErrors);

/// <summary>Runs a verb over each file named, in order.</summary>
internal static class PerUnit
{
    /// <summary>
    /// Reads each file and asks; then writes all answers. A file that cannot be read is diagnosed, the others are answered
    /// all the same, but nothing is put into an output file then.
    /// </summary>
    public static int Run(Session session, Func<Unit, string, UnitAnswer> ask)
    {
        session.CheckOutput();
        var answers = new List<(string File, UnitAnswer Answer)>();
        var unread = false;
        foreach (var file in session.Files)
        {
            session.StopIfInterrupted();
            if (Directory.Exists(file)) throw NamesFolder(file);
            if (session.Read(file) is { } unit) answers.Add((file, ask(unit, file)));
            else unread = true;
        }

        if (answers.Count > 0 && !(unread && session.WritesFile)) Write(session, answers);
        if (unread) return ExitCode.CouldNotRun;
        return answers.Any(answer => answer.Answer.HasErrors) ? ExitCode.Findings : ExitCode.Fine;
    }

    /// <summary>The gears named by <c>--gear</c>, in the order of the file; all when none is named.</summary>
    /// <exception cref="UserError">The unit has no such gear.</exception>
    public static ImmutableArray<string> Gears(Session session, Unit unit, string file)
    {
        var known = unit.Gears.Select(gear => gear.Name).ToImmutableArray();
        foreach (var gear in session.Gears)
        {
            if (!known.Contains(gear)) throw UserError.Unknown("gear", gear, known, $" in {file}");
        }

        return session.Gears.Count == 0 ? known : [.. known.Where(session.Gears.Contains)];
    }

    private static void Write(Session session, List<(string File, UnitAnswer Answer)> answers)
    {
        var several = session.Files.Count > 1;
        if (session.Format == OutputFormat.Json)
        {
            session.Finish([.. answers.Select(answer => answer.Answer.Json)], array: several);
            return;
        }

        var text = new StringBuilder();
        foreach (var (file, answer) in answers)
        {
            if (text.Length > 0) text.Append('\n');
            if (several) text.Append("file ").Append(Rendering.Printable.Of(file)).Append('\n');
            text.Append(answer.Text());
        }

        session.Finish(text.ToString());
    }

    private static UserError NamesFolder(string folder)
    {
        var units = UnitFiles.Below(folder);
        return new UserError(
            UserError.Usage, $"{folder} is a folder",
            units.Count == 0 ? "Name a circuit file." : $"Name one of its circuit files: {string.Join(", ", units.Take(8))}{(units.Count > 8 ? ", ..." : "")}");
    }
}
