using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Changes;

namespace Circuits.Cli;

/// <summary>The options that describe changes, and what they come to.</summary>
internal sealed class ChangeOptions
{
    private readonly ImmutableArray<(string Kind, Option<string[]> Option)> kinds;

    /// <summary>The options.</summary>
    /// <param name="common">Those that verbs share.</param>
    public ChangeOptions(CommonOptions common)
    {
        kinds =
        [
            ("fit", Make("--fit", "part=revision | set", "Fit another revision of a part, or all parts of a matched set.")),
            ("hole", Make("--hole", "location=size", "Give a location one round hole of that size: plate@21=2.0mm, front:21=#45, 21=0.083in.")),
            ("plug", Make("--plug", "location", "Close a location; a slot by its name, plate@6-7.")),
            ("drop", Make("--drop", "ball", "Leave a ball out.")),
            ("ball", Make("--ball", "ball=size", "A ball of another size; or a ball in a pocket that has none: body.either=6mm, with its seats body.either@11+12=6mm.")),
            ("stick", Make("--stick", "valve=how", "A valve sticks: rest, moved, midway (every port a little open), midway-shut. A regulator: open, shut, drained. A screen's bypass: open, shut.")),
            ("leak", Make("--leak", "a~b=area", "A leak between two passages, clutches or exhaust: body.line~exhaust=0.3mm2.")),
            ("solenoid", Make("--solenoid", "name=how", "A solenoid is stuck-low, stuck-high, reversed (of the other polarity) or dead.")),
            ("clog", Make("--clog", "screen=share", "A screen or filter is clogged by that share of its mesh: body.filter=80%; 0 for a clean one.")),
        ];
        foreach (var (kind, option) in kinds) Completes.FromUnit(option, common.Files, unit => TargetWords.Of(unit, kind));
        Completes.FromUnit(From, common.Files, unit => TargetWords.Of(unit, "fit"));
    }

    /// <summary>The assembly before the changes.</summary>
    public Option<string[]> From { get; } = Make(
        "--from", "part=revision | set", "The assembly before the changes: a matched set's name, or single revisions laid over the first matched set.");

    /// <summary>A file of changes.</summary>
    public Option<string[]> File { get; } = new("--changes")
    {
        HelpName = "FILE",
        Description = "A change set: a YAML file with the same changes, so that a job can be kept and repeated. May be repeated.",
    };

    /// <summary>Every option, in the order of the help page.</summary>
    public IEnumerable<Option> All => [From, .. kinds.Select(kind => kind.Option), File];

    /// <summary>The changes that the command line and its files ask for.</summary>
    /// <exception cref="UserError">Something about them is wrong; all of it is named.</exception>
    public ChangeSet Read(Session session)
    {
        var asked = kinds.SelectMany(kind => Words(session, kind.Option).Select(word => (kind.Kind, kind.Option.Name, word)));
        var from = Words(session, From).Select(word => ("fit", From.Name, word));
        ImmutableArray<ChangeSetResult> results =
        [
            ChangeWords.Read(from), .. Files(session).Select(file => ChangeSetReader.ReadFile(file, session.Inputs)), ChangeWords.Read(asked),
        ];
        var faults = results.SelectMany(result => result.Findings).ToList();
        if (results.Any(result => result.Set is null)) throw UserError.Of(faults);
        session.Diagnose(faults);
        ImmutableArray<ChangeSet> files = [.. results[1..^1].Select(result => result.Set!)];
        if (results[0].Set!.Changes.Length > 0 && files.FirstOrDefault(file => !file.From.IsEmpty) is { } second)
        {
            throw new UserError(
                UserError.Usage, $"--from and {second.From[0].Place} both name the assembly before the changes", "Leave one of them out.");
        }

        var jobs = files.Select(file => file.Job).OfType<string>().ToList();
        return new ChangeSet([.. files.SelectMany(file => file.Changes), .. results[^1].Set!.Changes])
        {
            From = [.. results[0].Set!.Changes, .. files.SelectMany(file => file.From)],
            Job = jobs.Count > 0 ? string.Join("; ", jobs) : null,
        };
    }

    /// <summary>The files of changes that the command line names.</summary>
    public IEnumerable<string> Files(Session session) => (session.Parsed.GetValue(File) ?? []).Distinct();

    /// <summary>The assembly before the changes.</summary>
    /// <exception cref="UserError">It names what the unit does not have.</exception>
    public static Assembly Base(Unit unit, ChangeSet asked)
    {
        var sets = asked.From.OfType<ChangeRequest.FitSet>().DistinctBy(set => set.Set).ToList();
        if (sets.Count > 1)
        {
            throw new UserError(
                UserError.Usage, $"two matched sets are named as the assembly before the changes: {sets[0].Set} and {sets[1].Set}",
                "Name one, and lay single parts over it as part=revision.");
        }

        return Resolve(Assembly.DefaultOf(unit), asked.From).Assembly!;
    }

    /// <summary>The assembly with the changes.</summary>
    /// <exception cref="UserError">It or they name what the unit does not have.</exception>
    public static Assembly After(Unit unit, ChangeSet asked)
    {
        var before = Base(unit, asked);
        return asked.Changes.IsEmpty ? before : Resolve(before, asked.Changes).Assembly!;
    }

    /// <summary>Changes, looked up in an assembly.</summary>
    /// <exception cref="UserError">Something about them is wrong; all of it is named.</exception>
    public static ResolvedChanges Resolve(Assembly from, ImmutableArray<ChangeRequest> changes)
    {
        var resolved = ChangeResolver.Resolve(from, changes);
        return resolved.Faults.IsEmpty ? resolved : throw UserError.Of(resolved.Faults);
    }

    private static ImmutableArray<string> Words(Session session, Option<string[]> option) => OptionWords.Items(session.Parsed.GetValue(option));

    private static Option<string[]> Make(string name, string value, string description) => new(name)
    {
        HelpName = value,
        Description = description + " May be repeated; several go with commas.",
    };
}
