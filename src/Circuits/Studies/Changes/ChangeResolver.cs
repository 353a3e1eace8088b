using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Model;

namespace Circuits.Studies.Changes;

/// <summary>Changes that were asked for, looked up.</summary>
/// <param name="Changes">The changes, in the order asked for; those that could be looked up.</param>
/// <param name="Assembly">The assembly with them; null when there is any fault.</param>
/// <param name="Faults">Everything that is wrong with what was asked for.</param>
public sealed record ResolvedChanges(ImmutableArray<Change> Changes, Assembly? Assembly, ImmutableArray<Finding> Faults);

/// <summary>Looks up what changes name, in the parts that are fitted.</summary>
public static class ChangeResolver
{
    /// <summary>
    /// Looks changes up and carries them out. Other parts are fitted first, whatever the order: every other change is
    /// about the parts that are fitted then.
    /// </summary>
    /// <param name="from">The assembly before.</param>
    /// <param name="requests">What is asked for.</param>
    public static ResolvedChanges Resolve(Assembly from, ImmutableArray<ChangeRequest> requests)
    {
        var faults = new List<Finding>();
        var changes = new List<(Change Change, ChangeRequest Request)>();
        var single = requests.OfType<ChangeRequest.Fit>().Select(fit => fit.Part).ToHashSet();
        foreach (var request in requests.Where(IsFit)) Fit(from, request, single, changes, faults);
        var fitted = ChangedAssembly.Of(from, Fits(changes));
        var names = new TargetNames(fitted, faults);
        var locations = new Locations(fitted);
        var balls = new BallTargets(fitted, names, faults);
        foreach (var drop in requests.OfType<ChangeRequest.Drop>()) Add(drop, balls.Drop(drop));
        var dropped = changes.Select(pair => pair.Change).OfType<DropBall>().Select(drop => drop.Element).ToHashSet();
        foreach (var request in requests)
        {
            switch (request)
            {
                case ChangeRequest.Hole hole:
                    Add(hole, HoleAt(locations, hole, faults));
                    break;
                case ChangeRequest.Plug plug:
                    Add(plug, PlugAt(locations, plug, faults));
                    break;
                case ChangeRequest.Ball ball:
                    Add(ball, balls.Put(ball, dropped));
                    break;
                case ChangeRequest.Stick stick:
                    Add(stick, Stick(names, stick, faults));
                    break;
                case ChangeRequest.Leak leak:
                    Add(leak, new PassageTargets(fitted, faults).Leak(leak));
                    break;
                case ChangeRequest.Clog clog:
                    Add(clog, Clog(names, clog));
                    break;
                case ChangeRequest.Solenoid solenoid:
                    Add(solenoid, Fail(names, solenoid, faults));
                    break;
            }
        }

        var ordered = changes.OrderBy(pair => requests.IndexOf(pair.Request)).ToList();
        Contradictions(ordered, faults);
        ImmutableArray<Change> resolved = [.. ordered.Select(pair => pair.Change)];
        return new ResolvedChanges(resolved, faults.Count > 0 ? null : ChangedAssembly.Of(from, resolved), InOrder(faults, requests));

        void Add(ChangeRequest request, Change? change)
        {
            if (change is not null) changes.Add((change, request));
        }
    }

    private static ImmutableArray<Finding> InOrder(List<Finding> faults, ImmutableArray<ChangeRequest> requests) =>
        [.. faults.Distinct().OrderBy(fault => requests.TakeWhile(request => request.Place != fault.Place).Count())];

    private static bool IsFit(ChangeRequest request) => request is ChangeRequest.Fit or ChangeRequest.FitSet;

    /// <summary>Of contradictory fits the first counts, so that the rest can still be looked up.</summary>
    private static IEnumerable<Change> Fits(List<(Change Change, ChangeRequest Request)> changes) =>
        changes.Select(pair => pair.Change).DistinctBy(change => change.Part);

    /// <summary>Revisions that are named singly are laid over those of a matched set.</summary>
    private static void Fit(
        Assembly from, ChangeRequest request, HashSet<string> single, List<(Change, ChangeRequest)> changes, List<Finding> faults)
    {
        var unit = from.Unit;
        if (request is ChangeRequest.FitSet whole)
        {
            if (unit.Matched.FirstOrDefault(set => set.Name == whole.Set) is not { } set)
            {
                faults.Add(unit.FindPart(whole.Set) is { } alone
                    ? ChangeRules.UnknownTarget.At(request.Place, $"part {whole.Set} is named without a revision", $"Write {whole.Set}={alone.Revisions[^1].Name}.")
                    : TargetNames.Unknown("matched set", whole.Set, request.Place, [.. unit.Matched.Select(each => each.Name)], []));
                return;
            }

            foreach (var (part, revision) in unit.Parts.Zip(Assembly.Of(unit, set).Revisions))
            {
                var was = from.Revisions[unit.Parts.IndexOf(part)].Name;
                if (revision.Name != was && !single.Contains(part.Name)) changes.Add((new FitRevision(part, revision, was), request));
            }

            return;
        }

        var fit = (ChangeRequest.Fit)request;
        if (unit.FindPart(fit.Part) is not { } owner)
        {
            faults.Add(TargetNames.Unknown("part", fit.Part, fit.Place, [.. unit.Parts.Select(part => part.Name)], []));
            return;
        }

        if (owner.FindRevision(fit.Revision) is not { } to)
            faults.Add(TargetNames.Unknown($"revision of {owner.Name}", fit.Revision, fit.Place, [.. owner.Revisions.Select(known => known.Name)], []));
        else
            changes.Add((new FitRevision(owner, to, from.Revisions[unit.Parts.IndexOf(owner)].Name), fit));
    }

    private static SetHole? HoleAt(Locations locations, ChangeRequest.Hole request, List<Finding> faults)
    {
        if (locations.Find(request.Location, request.Place, faults) is not { At: var at, Only: var only }) return null;
        var openings = only is null ? at.Openings : [only];
        if (openings.FirstOrDefault(opening => opening.At.Length > 1) is { } slot)
        {
            var name = $"{at.Sheet.Name}@{string.Join('-', slot.At.Select(location => location.Name))}";
            faults.Add(ChangeRules.ImpossibleChange.At(
                request.Place, $"{name} is one opening over several locations; a round hole cannot take its place", $"Plug it with --plug {name}, or fit another {at.Sheet.Name}."));
            return null;
        }

        var was = openings switch
        {
            [var one] => one.Shape,
            [] => at.IsWindow ? Shape.Unsized.Instance : null,
            _ => Shape.Unsized.Instance,
        };
        return new SetHole(at.Sheet.Name, at.Id, request.Size, was, openings.IsEmpty ? at.Revision.Place : openings[0].Place);
    }

    private static PlugOpening? PlugAt(Locations locations, ChangeRequest.Plug request, List<Finding> faults)
    {
        if (locations.Find(request.Location, request.Place, faults) is not { At: var at, Only: var only }) return null;
        var openings = only is null ? at.Openings : [only];
        var wasOpen = !openings.IsEmpty || at.IsWindow;
        ImmutableArray<string> closed = openings.IsEmpty ? [at.Id] : [.. openings.SelectMany(opening => opening.At).Select(location => location.Name).Distinct()];
        return new PlugOpening(at.Sheet.Name, closed, wasOpen, openings.IsEmpty ? at.Revision.Place : openings[0].Place);
    }

    private static Change? Stick(TargetNames names, ChangeRequest.Stick request, List<Finding> faults)
    {
        var found = names.Find<object>("valve or regulator", request.Element, request.Place, revision =>
            revision.Valves.Select(valve => (valve.Name, (object)valve)).Concat(revision.Regulators.Select(regulator => (regulator.Name, (object)regulator)))
                .Concat(revision.Screens.Where(screen => screen.Bypass is not null).Select(screen => (screen.Name, (object)screen))));
        switch (found?.Item)
        {
            case Valve valve:
                return Word(request.Position, "position of a valve", ValveWords, request.Place, faults) is { } at ? new StickValve(found.Part, valve, at) : null;
            case Regulator regulator:
                var words = regulator is Regulator.Spilling ? SpillingWords : ReducingWords;
                return Word(request.Position, $"way for {found.FullName} to stick", words, request.Place, faults) is { } how ? new StickRegulator(found.Part, regulator, how) : null;
            case Screen screen:
                return Word(request.Position, $"way for the bypass of {found.FullName} to stick", BypassWords, request.Place, faults) is { } stuck ? new StickBypass(found.Part, screen, stuck) : null;
            default:
                return null;
        }
    }

    private static ClogScreen? Clog(TargetNames names, ChangeRequest.Clog request) =>
        names.Find("screen", request.Name, request.Place, revision => revision.Screens.Select(screen => (screen.Name, screen))) is { } found
            ? new ClogScreen(found.Part, found.Item, request.Share)
            : null;

    private static FailSolenoid? Fail(TargetNames names, ChangeRequest.Solenoid request, List<Finding> faults)
    {
        var found = names.Find("solenoid", request.Name, request.Place, revision => revision.Solenoids.Select(solenoid => (solenoid.Name, solenoid)));
        var fault = Word(request.Fault, "fault of a solenoid", SolenoidWords, request.Place, faults);
        return found is null || fault is null ? null : new FailSolenoid(found.Part, found.Item, fault.Value);
    }

    private static KeyValuePair<string, StuckAt>[] ValveWords =>
        [new("rest", StuckAt.Rest), new("moved", StuckAt.Moved), new("midway", StuckAt.Midway), new("midway-shut", StuckAt.MidwayShut)];

    private static KeyValuePair<string, RegulatorStuck>[] SpillingWords => [new("open", RegulatorStuck.Open), new("shut", RegulatorStuck.Shut)];

    private static KeyValuePair<string, RegulatorStuck>[] ReducingWords => [.. SpillingWords, new("drained", RegulatorStuck.Drained)];

    private static KeyValuePair<string, BypassStuck>[] BypassWords => [new("open", BypassStuck.Open), new("shut", BypassStuck.Shut)];

    private static KeyValuePair<string, SolenoidFault>[] SolenoidWords =>
    [
        new("stuck-low", SolenoidFault.StuckLow), new("stuck-high", SolenoidFault.StuckHigh), new("reversed", SolenoidFault.Reversed),
        new("dead", SolenoidFault.Dead),
    ];

    private static T? Word<T>(string word, string what, KeyValuePair<string, T>[] words, Place place, List<Finding> faults)
        where T : struct
    {
        foreach (var (name, value) in words)
        {
            if (name == word) return value;
        }

        faults.Add(TargetNames.UnknownWord(what, word, place, [.. words.Select(pair => pair.Key)]));
        return null;
    }

    private static void Contradictions(List<(Change Change, ChangeRequest Request)> changes, List<Finding> faults)
    {
        var claimed = new Dictionary<string, (Change Change, ChangeRequest Request)>();
        foreach (var (change, request) in changes)
        {
            foreach (var claim in change.Claims)
            {
                if (claimed.TryAdd(claim, (change, request))) continue;
                var before = claimed[claim];
                faults.Add(ChangeRules.ContradictoryChanges.At(
                    request.Place, $"'{change.Text}' contradicts '{before.Change.Text}'", "Leave one of them out.") with
                {
                    Related = [new RelatedPlace(before.Request.Place, $"the other one")],
                });
                break;
            }
        }
    }
}
