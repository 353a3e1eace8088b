using System.Globalization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Changes;
using Circuits.Studies.Remedies;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies;

/// <summary>Remedies, held to searches that share nothing with them: every assembly judged, every opening edited in the file's text.</summary>
public class RemedyTests
{
    /// <summary>More revisions for the teaching unit, each with a fault of its own.</summary>
    private const string Worse = """
              wide-13: {based-on: 1, openings: [{at: 13, hole: 8 mm}]}
              blank-13: {based-on: 1, openings: [{at: 13, hole: null}]}
              wide-and-slot: {based-on: 2, openings: [{at: 13, hole: 8 mm}]}
              blank-and-slot: {based-on: 2, openings: [{at: 13, hole: null}]}
        """;

    private const string SlotOf2 = "marks: [slot from 6 to 7]}\n";

    private static readonly string Teaching = File.ReadAllText(Path.Combine(DemoUnit.Library, "rill", "rill.yaml"));

    private static (UnitJudge Judge, Assembly Assembly) Rill(string body, string plate, string more = Worse)
    {
        var text = Teaching.Replace(SlotOf2, SlotOf2 + more + "\n", StringComparison.Ordinal)
            .Replace("        marks: [rib between locations 5 and 6]\n", "        marks: [rib between locations 5 and 6]\n      no-ball: {based-on: 1, balls: {two-way: null}}\n", StringComparison.Ordinal);
        var read = CircuitReader.ReadText(text, "rill.yaml");
        Assert.True(read.Unit is not null, string.Join('\n', read.Findings.Select(finding => $"{finding.Place} {finding.Words()}")));
        var unit = read.Unit;
        var chosen = unit.Parts.Select(part => part.FindRevision(part.Name == "body" ? body : part.Name == "plate" ? plate : "1")!);
        return (new UnitJudge(unit), Assembly.Of(unit, [.. chosen]));
    }

    private static RemedyReport Ask(string body, string plate, RemedyOptions? options = null)
    {
        var (judge, assembly) = Rill(body, plate);
        return RemedySearch.Run(judge, assembly, options ?? new RemedyOptions(), TestContext.Current.CancellationToken);
    }

    private static string Text(Remedy remedy) => string.Join("; ", remedy.Changes.Select(change => change.Text.Words()));

    private static bool IsRight(AssemblyReport report) =>
        report.Verdict == Verdict.AsCharted && report.Findings.All(finding => finding.Severity != Severity.Error);

    // The page of the teaching unit: the slot alone is wrong with the old body; the old plate on the new body lacks a slot, which no drill makes.
    [Fact]
    public void The_slot_over_the_old_body_is_plugged_and_a_missing_slot_cannot_be_drilled()
    {
        var slot = Ask("1", "2");
        Assert.Equal(["fit body 2 instead of 1", "fit plate 1 instead of 2"], slot.Parts.Where(remedy => remedy.After.Assembly.Matched is not null).Select(Text));
        var plug = Assert.Single(slot.Bench);
        Assert.Equal("plug plate@6-7", Text(plug));
        Assert.Equal(["early"], plug.AsIn);
        Assert.True(plug.CanBeUndone);

        var rib = Ask("2", "1");
        Assert.Empty(rib.Bench);
        Assert.Equal(rib.BenchSearch.PossiblePairs, rib.BenchSearch.Pairs);
        Assert.True(rib.BenchSearch.Pairs > 100);
    }

    [Fact]
    public void A_right_assembly_needs_nothing()
    {
        var report = Ask("1", "1");
        Assert.True(report.IsRight);
        Assert.Empty(report.Parts);
        Assert.Empty(report.Bench);
    }

    // The high clutch has 3 mm in both matched sets; with more than twice that area it is metered nowhere.
    [Theory]
    [InlineData("wide-13", "sleeve plate@13 down to 3 mm (was 8 mm)", true)]
    [InlineData("blank-13", "drill a 3 mm hole at plate@13 (metal before)", false)]
    public void A_hole_is_sized_like_the_matched_set_and_never_left_unmetered(string plate, string text, bool undone)
    {
        var report = Ask("1", plate);
        var hole = Assert.Single(report.Bench, remedy => remedy.Changes is [SetHole { Location: "13" }]);
        Assert.Equal((text, undone), (Text(hole), hole.CanBeUndone));
        Assert.Equal(["early", "late"], hole.AsIn);
        Assert.Empty(hole.Leaves);
        Assert.Contains("3 mm", hole.Sizes.Select(size => size.Text));
        Assert.Contains("#32", hole.Sizes.Select(size => size.Text));
        Assert.DoesNotContain("4.3 mm", hole.Sizes.Select(size => size.Text));
        Assert.DoesNotContain("8 mm", hole.Sizes.Select(size => size.Text));
    }

    // One matched set meters the clutch by 2 mm, the other by nothing but the manual valve's own port, so the rule `unmetered`
    // has nothing to say. Held against the first, a hole of more than twice its area is no remedy all the same.
    [Fact]
    public void A_clutch_that_the_nearest_matched_set_meters_stays_metered()
    {
        var mixed = Circuits.Tests.Solving.CircuitCase.Of("""
            joints: {face: {between: [body, housing], sheets: [plate]}}
            pump: {into: body.line}
            parts:
              body:
                kind: casting
                revisions:
                  1:
                    passages: {line: {}, feed: {face: 1}}
                    regulators: {main: {holds: line, spills-to: exhaust, spring: 600 kPa, port: 30 mm2}}
                    lever: {"N": [{join: [feed, exhaust], area: 20 mm2}], D: [{join: [line, feed], area: 20 mm2}]}
                  2: {based-on: 1, marks: [a dot]}
              plate: {kind: sheet, revisions: {metered: {openings: [{at: 1, hole: 2 mm}]}, open: {openings: [{at: 1, hole: 8 mm}]}, blank: {openings: []}}}
              housing: {kind: casting, passages: {clutch: {face: 1}}}
            matched: {old: {body: 1, plate: metered}, new: {body: 2, plate: open}}
            clutches: {only: {at: housing.clutch}}
            gears: {"N": {lever: "N", apply: []}, D: {lever: D, apply: [only]}}
            """);
        Assert.True(Holds("1", "2.8 mm"));
        Assert.False(Holds("1", "3 mm"));
        Assert.False(Holds("1", "8 mm"));
        Assert.True(Holds("2", "8 mm"));

        bool Holds(string body, string size)
        {
            var start = mixed.Assembly($"body={body}", "plate=blank");
            var judge = new RemedyJudge(mixed.Judge, start, _ => { }, TestContext.Current.CancellationToken);
            var resolved = ChangeResolver.Resolve(start, ChangeTests.Requests($"hole plate@1={size}"));
            var report = mixed.Judge.Report(resolved.Assembly!);
            Assert.True(IsRight(report), size);
            return judge.Right(resolved.Assembly!) is not null;
        }
    }

    [Fact]
    public void Two_faults_take_two_changes()
    {
        var report = Ask("1", "wide-and-slot");
        Assert.Contains("plug plate@6-7; sleeve plate@13 down to 3 mm (was 8 mm)", report.Bench.Select(Text));
        Assert.All(report.Bench, remedy => Assert.Equal(2, remedy.Changes.Length));
        Assert.Contains("plug plate@6-7; drill a 3 mm hole at plate@13 (metal before)", Ask("1", "blank-and-slot").Bench.Select(Text));
        Assert.Empty(Ask("1", "wide-and-slot", new RemedyOptions { MostPairs = 0 }).Bench);
    }

    [Fact]
    public void A_ball_that_is_missing_is_put_back_first()
    {
        var report = Ask("no-ball", "1");
        Assert.Equal("put a ball of 7 mm into body.either, for seats 11 and 12", Text(report.Bench[0]));
        Assert.Equal(["early", "late"], report.Bench[0].AsIn);
    }

    [Fact]
    public void Only_what_is_at_hand_is_offered()
    {
        var (judge, assembly) = Rill("1", "2");
        var hand = assembly.Unit.Parts.Select(part => part.Name == "body" ? [part.FindRevision("2")!] : System.Collections.Immutable.ImmutableArray<Revision>.Empty);
        var report = RemedySearch.Run(judge, assembly, new RemedyOptions { AtHand = [.. hand], MostPairs = 0 }, TestContext.Current.CancellationToken);
        Assert.Equal(["fit body 2 instead of 1"], report.Parts.Select(Text));
        Assert.Equal(1, report.PartSearch.Tried);
    }

    [Fact]
    public void A_search_can_be_broken_off()
    {
        var (judge, assembly) = Rill("2", "1");
        using var stop = new CancellationTokenSource();
        var solved = 0;
        Assert.Throws<OperationCanceledException>(() => RemedySearch.Run(judge, assembly, new RemedyOptions
        {
            Progress = count =>
            {
                solved = count;
                if (count == 20) stop.Cancel();
            },
        }, stop.Token));
        Assert.Equal(20, solved);
    }

    // Every assembly of the unit is judged in full; of those that are right, the ones that share most parts are the answer.
    [Theory]
    [InlineData("rill/rill.yaml")]
    [InlineData("weir/weir.yaml")]
    public void The_fewest_parts_are_those_that_judging_every_assembly_finds(string file)
    {
        var demo = new DemoUnit(file);
        var all = Everything(demo.Unit).Select(assembly => demo.Judge.Report(assembly)).ToList();
        var right = all.Where(IsRight).Select(report => report.Assembly).ToList();
        Assert.NotEmpty(right);
        foreach (var bad in all.Where(report => !IsRight(report)).Where((_, i) => i % 7 == 0))
        {
            var judge = new RemedyJudge(demo.Judge, bad.Assembly, _ => { }, TestContext.Current.CancellationToken);
            var (remedies, extent) = PartSearch.Run(judge, [.. demo.Unit.Parts.Select(part => part.Revisions)]);
            var least = right.Min(assembly => Changed(assembly, bad.Assembly));
            Assert.Equal(least, extent.Fewest);
            Assert.Equal(
                right.Where(assembly => Changed(assembly, bad.Assembly) == least).Select(Name).Order(StringComparer.Ordinal),
                remedies.Select(remedy => Name(remedy.After.Assembly)).Order(StringComparer.Ordinal));
        }
    }

    // One plug or hole at a time, written into the file's text as another plate and judged as such.
    [Theory]
    [InlineData("1", "2")]
    [InlineData("2", "1")]
    [InlineData("1", "wide-13")]
    [InlineData("1", "blank-13")]
    [InlineData("no-ball", "1")]
    public void Work_on_the_plate_is_what_editing_the_file_finds(string body, string plate)
    {
        var report = Ask(body, plate, new RemedyOptions { MostPairs = 0 });
        var (judge, assembly) = Rill(body, plate);
        var known = judge.Report(assembly).Findings.Select(finding => finding.Rule + finding.Gear).ToHashSet();

        // What the slot spans is one opening: it can be plugged whole, and no round hole takes its place.
        string[] at = plate == "2" ? ["2", "3", "5", "8", "11", "12", "13"] : ["2", "3", "5", "6", "7", "8", "11", "12", "13"];
        string[] open = plate == "2" ? [.. at, "[6, 7]"] : [.. at.Where(where => where is not "6" and not "7" && (where, plate) != ("13", "blank-13"))];
        double[] sizes = [3, 4, 1.6, 1, 5, 8];
        var plugs = open.Where(where => Edited(body, plate, $"{{at: {where}, hole: null}}", known)).ToList();
        var holes = at.Where(where => sizes.Any(size => Edited(body, plate, string.Create(CultureInfo.InvariantCulture, $"{{at: {where}, hole: {size} mm}}"), known))).ToList();
        Assert.Equal(
            plugs.Select(where => $"plate@{where.Replace(", ", "-").Trim('[', ']')}").Order(StringComparer.Ordinal),
            report.Bench.Where(remedy => remedy.Changes is [PlugOpening]).Select(remedy => remedy.Changes[0].Element).Order(StringComparer.Ordinal));
        Assert.Equal(
            holes.Order(StringComparer.Ordinal),
            report.Bench.Select(remedy => remedy.Changes[0]).OfType<SetHole>().Select(hole => hole.Location).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("weir/weir.yaml", "2 2 1 1")]
    [InlineData("weir/weir.yaml", "3 3 1 2")]
    [InlineData("weir/weir.yaml", "3 2 2 2")]
    public void Every_offer_is_right_in_every_gear_and_leaves_no_clutch_unmetered(string file, string choice)
    {
        var demo = new DemoUnit(file);
        var start = demo.Pick(choice.Split(' '));
        var report = RemedySearch.Run(demo.Judge, start, new RemedyOptions { MostPairs = 200 }, TestContext.Current.CancellationToken);
        Assert.False(report.IsRight);
        Assert.NotEmpty(report.Bench);
        foreach (var remedy in report.Parts.Concat(report.Bench))
        {
            var after = new UnitJudge(demo.Unit).Report(ChangedAssembly.Of(start, remedy.Changes));
            Assert.True(IsRight(after), Text(remedy));
            Assert.DoesNotContain(after.Findings, finding => finding.Rule == "unmetered");
        }
    }

    /// <summary>Whether the assembly with one entry more in its plate is right, meters every clutch, and nothing new is wrong with it.</summary>
    private static bool Edited(string body, string plate, string entry, HashSet<string> known)
    {
        // Two entries of one revision for the same location would be two holes, so the edit is a revision of its own.
        var (judge, assembly) = Rill(body, "x", $"{Worse}\n      x: {{based-on: {plate}, openings: [{entry}]}}");
        var report = judge.Report(assembly);
        return IsRight(report) && report.Findings.All(finding => finding.Rule != "unmetered") && report.Findings.All(finding =>
            finding.Severity != Severity.Warning || finding.Rule == "control-changed" || known.Contains(finding.Rule + finding.Gear));
    }

    private static IEnumerable<Assembly> Everything(Unit unit)
    {
        IEnumerable<System.Collections.Immutable.ImmutableArray<Revision>> choices = [[]];
        foreach (var part in unit.Parts) choices = [.. choices.SelectMany(choice => part.Revisions.Select(revision => choice.Add(revision)))];
        return choices.Select(choice => Assembly.Of(unit, choice));
    }

    private static int Changed(Assembly one, Assembly other) => one.Revisions.Length - one.SharedParts(other);

    private static string Name(Assembly assembly) => string.Join(' ', assembly.Choice.Select(pair => pair.Value));
}
