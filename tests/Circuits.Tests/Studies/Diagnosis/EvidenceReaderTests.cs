using Circuits.Judging;
using Circuits.Studies.Diagnosis;
using Circuits.Tests.Demo;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>What people tell of a unit, understood. The trade's words are common practice, no source.</summary>
public class EvidenceReaderTests
{
    private static readonly EvidenceReader Firth = new(new DemoUnit("firth/firth.yaml").Judge);
    private static readonly EvidenceReader Weir = new(new DemoUnit("weir/weir.yaml").Judge);

    private static string Understood(EvidenceReader reader, string text)
    {
        var read = reader.Complaint(text);
        Assert.True(read.Evidence is not null, $"{text}: {read.Problem} {read.Help}");
        var felt = Assert.IsType<Evidence.Felt>(read.Evidence);
        return string.Join(' ', felt.In.Select(item => $"{item.Gear}:{item.Fits[0].Kind}{(item.Fits[0].Instead is { } other ? $"({other})" : "")}"));
    }

    // Gears of the full unit: P 0, R 1, N 2, 1 3, 2 4, 3 5, 4 6, 5 7, 6 8, limp 9, limp-R 10.
    [Theory]
    [InlineData("no reverse", "1:NoDrive")]
    [InlineData("No Reverse.", "1:NoDrive")]
    [InlineData("no R", "1:NoDrive")]
    [InlineData("neutral in third", "5:NoDrive")]
    [InlineData("no 3", "5:NoDrive")]
    [InlineData("no fourth gear", "6:NoDrive")]
    [InlineData("slips in 4th", "6:Slips")]
    [InlineData("flare 2-3", "5:NoDrive")]
    [InlineData("flares on the 2-3 shift", "5:NoDrive")]
    [InlineData("engine runs up between 2 and 3", "5:NoDrive")]
    [InlineData("tie-up in 4", "6:TieUp")]
    [InlineData("binds on the 3-4 upshift", "6:TieUp")]
    [InlineData("locks up in reverse", "1:TieUp")]
    [InlineData("harsh reverse engagement", "1:Harsh")]
    [InlineData("slams into R", "1:Harsh")]
    [InlineData("hard 1–2 shift", "4:Harsh")]
    [InlineData("delayed reverse", "1:Delayed")]
    [InlineData("soft 2-3", "5:Delayed")]
    [InlineData("wrong gear in 2", "4:WrongGear")]
    [InlineData("4 instead of 3", "5:WrongGear(4)")]
    [InlineData("starts in third", "3:WrongGear(3)")]
    [InlineData("creeps in neutral", "2:CreepsForward")]
    [InlineData("creeps backward", "2:CreepsBackward")]
    [InlineData("no engine braking in 2", "4:NoEngineBraking")]
    [InlineData("drives backward in 1", "3:WrongDirection")]
    [InlineData("comes and goes in 5", "7:NeverSettles")]
    [InlineData("stuck in 2", "3:WrongGear(2) 4:AsItShould 5:WrongGear(2) 6:WrongGear(2) 7:WrongGear(2) 8:WrongGear(2)")]
    [InlineData("never leaves second", "3:WrongGear(2) 4:AsItShould 5:WrongGear(2) 6:WrongGear(2) 7:WrongGear(2) 8:WrongGear(2)")]
    [InlineData("no forward", "3:NoDrive 4:NoDrive 5:NoDrive 6:NoDrive 7:NoDrive 8:NoDrive")]
    [InlineData("no drive", "1:NoDrive 3:NoDrive 4:NoDrive 5:NoDrive 6:NoDrive 7:NoDrive 8:NoDrive")]
    [InlineData("doesn't move in 1", "3:NoDrive")]
    [InlineData("no drive in limp-R", "10:NoDrive")]
    public void A_complaint_is_understood(string text, string expected) => Assert.Equal(expected, Understood(Firth, text));

    // Manual low has a position of the lever of its own, so a driver can tell of it; a gear that is held, or is the default, has not.
    [Theory]
    [InlineData("weir/weir.yaml", "R N 1 2 3 4 L L2", "1 2 3 4")]
    [InlineData("firth/firth.yaml", "P R N 1 2 3 4 5 6", "1 2 3 4 5 6")]
    public void A_driver_knows_the_gears_that_the_lever_and_the_ratio_tell_apart(string file, string driven, string forward)
    {
        var judge = new DemoUnit(file).Judge;
        var gears = new GearWords(judge);
        Assert.Equal(driven, string.Join(' ', gears.Driven.Select(gear => judge.Unit.Gears[gear].Name)));
        Assert.Equal(forward, string.Join(' ', gears.Forward.Select(gear => judge.Unit.Gears[gear].Name)));
    }

    [Fact]
    public void A_gear_with_a_hyphen_in_its_name_is_no_shift() => Assert.Equal("6:Slips", Understood(Weir, "slips in 3-held"));

    // Every word of the vocabulary, in every way that a gear can be named.
    [Fact]
    public void Every_word_is_understood_with_a_gear_and_a_shift()
    {
        foreach (var kind in Complaints.All)
        {
            foreach (var word in kind.Words)
            {
                foreach (var phrase in (string[])[$"{word} in 3", $"{word} 2-3", $"{word.ToUpperInvariant()} third"])
                    Assert.Equal($"5:{kind.Fits.First(fit => !(word.EndsWith("backward", StringComparison.Ordinal) && fit.Kind == FeelKind.CreepsForward)).Kind}", Understood(Firth, phrase));
            }
        }
    }

    // What a unit does is told in words that mean just that.
    [Theory]
    [InlineData("rill/rill.yaml")]
    [InlineData("weir/weir.yaml")]
    [InlineData("firth/firth.yaml")]
    public void The_words_for_a_feeling_mean_that_feeling(string file)
    {
        var judge = new DemoUnit(file).Judge;
        var reader = new EvidenceReader(judge);
        foreach (var kind in Enum.GetValues<FeelKind>().Where(kind => kind is not (FeelKind.AsItShould or FeelKind.Starved or FeelKind.OverPressure or FeelKind.Undecided or FeelKind.Flares or FeelKind.NeverComes)))
        {
            for (var gear = 0; gear < judge.Unit.Gears.Length; gear++)
            {
                var effect = new GearEffect(new Feel(kind, judge.Unit.Gears[1].Name) { Other = kind == FeelKind.WrongGear ? judge.Unit.Gears[0].Name : null }, [], []);
                var felt = Assert.IsType<Evidence.Felt>(reader.Complaint(Complaints.Of(effect, judge.Unit.Gears[gear].Name)!.Words()).Evidence);
                var only = Assert.Single(felt.In);
                Assert.Equal(gear, only.Gear);
                Assert.Equal(1, only.Of(effect));
            }
        }
    }

    [Theory]
    [InlineData("shudders in 2", "complaint 'shudders in 2' is not understood", "Known: no GEAR;")]
    [InlineData("slps in 2", "complaint 'slps in 2' is not understood", "Did you mean 'slips'?")]
    [InlineData("flare", "complaint 'flare' does not say in which gear", "Write it as flare GEAR-GEAR.")]
    [InlineData("", "complaint '' is not understood", "Known: no GEAR;")]
    [InlineData("slips in 9", "complaint 'slips in 9' is not understood", "Gears: P, R, N, 1")]
    public void What_is_not_understood_gets_the_list(string text, string problem, string help)
    {
        var read = Firth.Complaint(text);
        Assert.Equal(problem, read.Problem);
        Assert.Contains(help, read.Help, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("direct@3=310kPa", 310)]
    [InlineData("direct@3 = 3.1 bar", 310)]
    [InlineData("direct@third=45 psi", 310.26)]
    [InlineData("direct@3,idle=310kPa", 310)]
    public void A_reading_is_understood(string text, double kilopascals)
    {
        var reading = Assert.IsType<Evidence.Reading>(Firth.Reading(text).Evidence);
        Assert.Equal((4, 5), (reading.Tap, reading.Gear));
        Assert.Equal(kilopascals, reading.Kilopascals, 0.01);
    }

    [Theory]
    [InlineData("direct@3=310", "reading 'direct@3=310' has no unit")]
    [InlineData("direct@3=310 N", "reading 'direct@3=310 N': N is no unit of pressure")]
    [InlineData("direct@3=soft", "reading 'direct@3=soft': 'soft' is no pressure")]
    [InlineData("drect@3=310kPa", "reading 'drect@3=310kPa': there is no tap 'drect'")]
    [InlineData("direct@9=310kPa", "reading 'direct@9=310kPa': there is no gear '9'")]
    [InlineData("direct@3,warm=310kPa", "reading 'direct@3,warm=310kPa': 'warm' is no condition")]
    [InlineData("direct=310kPa", "reading 'direct=310kPa' is not understood")]
    [InlineData("direct@3=99MPa", "reading 'direct@3=99MPa' is beyond any gauge")]
    public void A_reading_that_cannot_be_gets_a_reason(string text, string problem)
    {
        var read = Firth.Reading(text);
        Assert.Null(read.Evidence);
        Assert.Equal(problem, read.Problem);
        Assert.False(string.IsNullOrEmpty(read.Help));
    }

    [Fact]
    public void A_unit_without_gears_to_drive_or_taps_says_so()
    {
        var bare = new EvidenceReader(CircuitCase.Of("""
            parts: {body: {kind: casting, passages: {line: {}}}}
            gears: {idle: {apply: []}}
            """).Judge);
        Assert.Contains("Gears: idle.", bare.Complaint("no reverse").Help, StringComparison.Ordinal);
        Assert.Equal("The file names no tap.", bare.Reading("line@idle=1kPa").Help);
        Assert.Equal("0:TieUp", Understood(bare, "tie-up in idle"));
    }
}
