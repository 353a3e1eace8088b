using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Model;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Diagnosis;

namespace Circuits.Cli;

/// <summary>The options that tell what was observed of a vehicle.</summary>
internal sealed class EvidenceOptions
{
    private readonly Option<string[]> complaint = Make("--complaint", "phrase", "What the driver complains of: \"no reverse\", \"flare 2-3\", \"tie-up in 4\".");

    private readonly Option<string[]> healthy = Make("--healthy", "gear", "A gear that works as it should; several go with commas.");

    private readonly Option<string[]> reading = Make(
        "--reading", "tap@gear=pressure", "A gauge reading: direct@3=310kPa; with the pump's speed, by its name in the file or in rpm, and the oil's temperature, direct@3,idle,40degC=310kPa.");

    private readonly Option<string[]> air = Make(
        "--air", "port=noticed", "What air at the bench showed, in the words of the air-check sheet: \"high=high moves\", \"high=hiss: clutch high\", \"high=as it should\"; several go with semicolons.");

    /// <param name="common">Those that verbs share.</param>
    public EvidenceOptions(CommonOptions common)
    {
        Completes.FromUnit(healthy, common.Files, unit => unit.Gears.Select(gear => gear.Name));
        Completes.FromUnit(air, common.Files, unit => new AirBench(Assembly.DefaultOf(unit)).Ports.Select(port => port.Name + "="));
    }

    /// <summary>Every option, in the order of the help page.</summary>
    public IEnumerable<Option> All => [complaint, healthy, reading, air];

    /// <summary>The complaints, as they were written.</summary>
    public ImmutableArray<string> Complaints(Session session) => [.. Values(session, complaint)];

    /// <summary>What the complaints say, in their order.</summary>
    public IEnumerable<EvidenceReading> ReadComplaints(Session session, EvidenceReader reader) => Values(session, complaint).Select(reader.Complaint);

    /// <summary>What healthy gears, readings and air say.</summary>
    public IEnumerable<EvidenceReading> ReadOthers(Session session, EvidenceReader reader, Assembly assembly)
    {
        var airReader = new AirReader(assembly);
        return OptionWords.Items(Values(session, healthy)).Select(reader.Healthy).Concat(Values(session, reading).Select(reader.Reading))
            .Concat(Values(session, air).SelectMany(text => airReader.Read(text)));
    }

    /// <summary>What is understood.</summary>
    /// <exception cref="UserError">Something is not; all of it is named.</exception>
    public static ImmutableArray<Evidence> Understood(IEnumerable<EvidenceReading> readings)
    {
        var all = readings.ToList();
        var wrong = all.Where(read => read.Evidence is null).ToList();
        return wrong.Count == 0 ? [.. all.Select(read => read.Evidence!)] : throw UserError.Of(wrong.Select(read => (read.Problem!, read.Help)));
    }

    private static string[] Values(Session session, Option<string[]> option) => session.Parsed.GetValue(option) ?? [];

    private static Option<string[]> Make(string name, string value, string description) => new(name) { HelpName = value, Description = description + " May be repeated." };
}
