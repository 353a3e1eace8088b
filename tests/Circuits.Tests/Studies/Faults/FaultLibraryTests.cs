using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Reading;
using Circuits.Studies.Faults;
using Circuits.Tests.Demo;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies.Faults;

/// <summary>The faults that a unit may have, derived from the unit.</summary>
public class FaultLibraryTests
{
    public static TheoryData<string> Units() => ["rill/rill.yaml", "weir/weir.yaml", "firth/firth.yaml"];

    private static string[] Codes(IEnumerable<Fault> faults, FaultKind kind) => [.. faults.Where(fault => fault.Kind == kind).Select(fault => fault.Code)];

    // Counted by hand from the teaching unit's file, first matched set: two parts of two revisions; one ball; seven openings; neighbours within
    // 15 mm of each other in each casting.
    [Fact]
    public void The_teaching_unit_has_these_faults_and_no_others()
    {
        var unit = new DemoUnit("rill/rill.yaml").Unit;
        var faults = FaultLibrary.Of(Assembly.DefaultOf(unit));
        Assert.Equal(["wrong-revision body=2", "wrong-revision plate=2"], Codes(faults, FaultKind.WrongRevision));
        Assert.Equal(["ball-left-out body.two-way"], Codes(faults, FaultKind.BallLeftOut));
        Assert.Equal(["ball-wrong-size body.two-way=4.5mm"], Codes(faults, FaultKind.BallWrongSize));
        Assert.Equal(
            ["2", "3", "5", "8", "11", "12", "13"], Codes(faults, FaultKind.HolePlugged).Select(code => code.Replace("hole-plugged plate@", "", StringComparison.Ordinal)));
        Assert.Equal(7, Codes(faults, FaultKind.HoleWorn).Length);
        Assert.Equal(
            ["body.reverse~body.drive", "body.drive~body.second", "body.second~body.either", "body.second~body.reverse", "housing.forward~housing.reverse",
                "housing.forward~housing.second", "housing.reverse~housing.second", "housing.reverse-brake~housing.second", "housing.high~housing.second", "housing.high~housing.reverse"],
            Codes(faults, FaultKind.PassagesLeak).Select(code => code["passages-leak ".Length..]), Comparer);
        Assert.Equal(["seal-leaking forward", "seal-leaking high", "seal-leaking reverse-brake"], Codes(faults, FaultKind.SealLeaking));
        Assert.Equal(["spring-missing body.main", "spring-missing forward", "spring-missing high", "spring-missing reverse-brake"], Codes(faults, FaultKind.SpringMissing));
        Assert.Equal(
            ["exhaust-restricted body.lever:drive", "exhaust-restricted body.lever:second", "exhaust-restricted body.lever:reverse"],
            Codes(faults, FaultKind.ExhaustRestricted));
        Assert.Equal(["regulator-stuck-open body.main"], Codes(faults, FaultKind.RegulatorStuckOpen));
        Assert.Equal(["regulator-stuck-shut body.main"], Codes(faults, FaultKind.RegulatorStuckShut));

        // The 7 mm ball closes every hole of the plate; not where it lies itself, nor over its own seats from the other side.
        Assert.Equal(
            ["body.reverse@2", "body.reverse@8", "body.drive@3", "body.second@5", "housing.forward@3", "housing.second@5", "housing.reverse@2", "housing.reverse-brake@8", "housing.high@13"],
            Codes(faults, FaultKind.BallMisplaced).Select(code => code["ball-misplaced ".Length..]));
        Assert.Empty(Codes(faults, FaultKind.SolenoidStuckLow));
        Assert.Empty(Codes(faults, FaultKind.SheetsSwapped));
    }

    /// <summary>Pairs of passages in any order.</summary>
    private static IEqualityComparer<IEnumerable<string>> Comparer => EqualityComparer<IEnumerable<string>>.Create((a, b) => Sorted(a!).SequenceEqual(Sorted(b!)));

    private static IEnumerable<string> Sorted(IEnumerable<string> pairs) =>
        pairs.Select(pair => string.Join('~', pair.Split('~').Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Units))]
    public void Every_fault_has_a_code_a_name_a_place_and_a_network_of_its_own(string file)
    {
        var unit = new DemoUnit(file).Unit;
        foreach (var set in unit.Matched)
        {
            var assembly = Assembly.Of(unit, set);
            var faults = FaultLibrary.Of(assembly);
            Assert.Equal(faults.Length, faults.Select(fault => fault.Code).Distinct().Count());
            Assert.Equal(faults.Length, faults.Select(fault => fault.Name).Distinct().Count());
            foreach (var fault in faults)
            {
                Assert.True(fault.Place.Line > 0, fault.Code);
                Assert.True(fault.Weight > 0, fault.Code);
                var changed = fault.In(assembly);
                Assert.True(fault.Kind == FaultKind.WrongRevision || changed.Changes.Length > 0, fault.Code);
                Assert.NotEmpty(NetworkBuilder.Build(changed).Nodes);
            }
        }
    }

    // The demo units have no screens; ScreenFaultTests holds those.
    [Fact]
    public void The_demo_library_shows_every_kind_but_those_of_screens()
    {
        var kinds = Units().Select(row => row.Data).SelectMany(file => FaultLibrary.Of(Assembly.DefaultOf(new DemoUnit(file).Unit))).Select(fault => fault.Kind).Distinct();
        Assert.Equal(Enum.GetValues<FaultKind>().Except([FaultKind.ScreenClogged, FaultKind.ScreenOut, FaultKind.BypassStuckOpen, FaultKind.BypassStuckShut]), kinds.Order());
    }

    [Fact]
    public void The_file_weighs_kinds_and_single_faults_and_names_neighbours()
    {
        var text = File.ReadAllText(Path.Combine(DemoUnit.Library, "rill", "rill.yaml"))
            + "\nfaults: {weights: {hole-plugged: 0, seal-leaking: 3}, named: {\"seal-leaking high\": 40, \"hole-plugged plate@13\": 1}, near: 1 mm, neighbours: [[body.line, housing.high]], passage-leak: 2 mm2}\n";
        var unit = CircuitReader.ReadText(text, "rill.yaml").Unit!;
        var faults = FaultLibrary.Of(Assembly.DefaultOf(unit));
        Assert.Equal(["hole-plugged plate@13"], Codes(faults, FaultKind.HolePlugged));
        Assert.Equal([3, 40, 3], faults.Where(fault => fault.Kind == FaultKind.SealLeaking).Select(fault => fault.Weight));
        var leak = Assert.Single(faults, fault => fault.Kind == FaultKind.PassagesLeak);
        Assert.Equal("passages-leak body.line~housing.high", leak.Code);
        Assert.Equal(["leak of 2 mm2 between body.line and housing.high"], leak.Changes.Select(change => change.Text.Words()));
    }

    // Sheet a lets oil from x at 1 to 2 by a slot, but only where it lies against the casting that has x: the other way round it joins b's passages.
    [Fact]
    public void Sheets_in_each_others_place_lead_the_oil_another_way()
    {
        var small = CircuitCase.Of("""
            joints: {face: {between: [top, bottom], sheets: [slotted, plain]}}
            pump: {into: top.line}
            parts:
              top: {kind: casting, passages: {line: {face: 1}, far: {face: 2}}, regulators: {main: {holds: line, spills-to: exhaust, spring: 500 kPa}}}
              bottom: {kind: casting, passages: {one: {face: 1}, two: {face: 2}}}
              slotted: {kind: sheet, openings: [{at: [1, 2], slot: 4 x 20 mm}]}
              plain: {kind: sheet, openings: [{at: 2, hole: 5 mm}]}
            clutches: {left: {at: top.far}, right: {at: bottom.two}}
            gears: {D: {apply: [left, right]}}
            """);
        var right = small.Assembly();
        var swap = FaultLibrary.Of(right).Single(fault => fault.Kind == FaultKind.SheetsSwapped);
        Assert.Equal([ClutchState.Applied, ClutchState.Applied], Clutches(small, right));
        Assert.Equal([ClutchState.Released, ClutchState.Released], Clutches(small, swap.In(right)));
        Assert.Equal(["lay slotted and plain in each other's place in joint face"], swap.In(right).Changes.Select(change => change.Words()));

        static IEnumerable<ClutchState> Clutches(CircuitCase unit, Assembly assembly) => unit.Judge.Report(assembly).Gears[0].Clutches.Select(clutch => clutch.State);
    }

    [Fact]
    public void Faults_of_one_thing_do_not_go_together()
    {
        var faults = FaultLibrary.Of(Assembly.DefaultOf(new DemoUnit("rill/rill.yaml").Unit)).ToDictionary(fault => fault.Code);
        Assert.False(faults["ball-left-out body.two-way"].GoesWith(faults["ball-wrong-size body.two-way=4.5mm"]));
        Assert.False(faults["hole-plugged plate@13"].GoesWith(faults["hole-worn plate@13"]));
        Assert.False(faults["wrong-revision plate=2"].GoesWith(faults["hole-worn plate@13"]));
        Assert.True(faults["wrong-revision plate=2"].GoesWith(faults["wrong-revision body=2"]));
        Assert.True(faults["hole-plugged plate@13"].GoesWith(faults["hole-plugged plate@12"]));
    }
}
