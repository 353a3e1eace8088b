using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Remedies;

namespace Circuits.Rendering;

/// <summary>A job sheet, as text and as Markdown.</summary>
public static class JobSheetContent
{
    private const int MostOffers = 3;
    /// <summary>The sheet as a page; every line ends with a newline.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Text(JobSheet sheet, TextOptions options) => SheetText.Page(Of(sheet, options.Units), options);

    /// <summary>The sheet as Markdown.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="units">The units to use.</param>
    public static string Markdown(JobSheet sheet, UnitSystem units) => SheetText.Markdown(Of(sheet, units), units);

    /// <summary>The sheet, before anyone lays it out.</summary>
    internal static SheetContent Of(JobSheet sheet, UnitSystem units)
    {
        var (given, found) = (sheet.Given, sheet.Found);
        var unit = found.Assembly.Unit;
        var head = ImmutableArray.CreateBuilder<KeyValuePair<string, string>>();
        if (given.Job is { } job) head.Add(new("job", job));
        head.Add(new("unit", $"{unit.Name} (data: {Words.Of(unit.Data)})"));
        head.Add(new("verdict", GearsText.Summary(found)));
        foreach (var file in given.Files) head.Add(new("file", $"{file.File}, SHA-256 {file.Fingerprint}"));
        var sections = ImmutableArray.CreateBuilder<SheetSection>();
        foreach (var section in new[] { Complaint(sheet, units), Cause(sheet, units), Correction(sheet, units), Parts(found, units), Evidence(found, units) }) sections.Add(section);
        if (Expected(sheet, units) is { } expected) sections.Add(expected);
        if (!given.Notes.IsEmpty) sections.Add(new SheetSection(SheetPart.Notes, "Notes, as given", [.. given.Notes.Select(note => new SheetLine(note))]));
        if (!found.Assumptions.IsEmpty) sections.Add(new SheetSection(SheetPart.Assumptions, "Assumptions", [.. found.Assumptions.Select(assumption => new SheetLine(PhraseWords.Of(assumption.Text, units)))]));
        var cautions = Cautions.For(found, pressures: !unit.Taps.IsEmpty).Concat(RemedyText.CautionsFor(sheet.Remedy)).Distinct().OrderBy(caution => caution == Cautions.WhoDecides);
        sections.Add(new SheetSection(SheetPart.Cautions, "Cautions", [.. cautions.Select(caution => new SheetLine(caution))]));
        return new SheetContent("Job sheet", head.ToImmutable(), sections.ToImmutable());
    }

    private static SheetSection Complaint(JobSheet sheet, UnitSystem units)
    {
        var lines = sheet.Given.Complaints.Select(complaint => new SheetLine($"as given: {complaint}")).ToList();
        lines.AddRange(sheet.Given.Evidence.Where(item => !sheet.Given.Complaints.Contains(item.Text)).Select(item => new SheetLine($"as given: {item.Text}: {PhraseWords.Of(item.Meaning, units)}")));
        if (lines.Count == 0) lines.Add(new SheetLine("none was given"));
        var feels = sheet.Found.Gears.Where(gear => gear.Drive is { Feel.Kind: not FeelKind.AsItShould }).Select(gear => ((string?)gear.Gear, gear.Drive!.Feel));
        var grouped = GearLabels.Group(feels, Gears(sheet.Found), FeelWords.ButGear);
        lines.AddRange(grouped.SelectMany(group => group.Items.Select(feel => new SheetLine($"computed of the parts as found: {Lower(group.Gears.Heading)}: {FeelWords.Of(feel, gearIsTold: true)}"))));
        if (sheet.Found.Assembly.Unit.GearSet is null) lines.Add(new SheetLine("the file has no gear train, so what the driver feels is not computed"));
        else if (grouped.IsEmpty) lines.Add(new SheetLine("computed of the parts as found: the vehicle drives as it should in every gear"));
        return new SheetSection(SheetPart.Complaint, "Complaint", [.. lines]);
    }

    private static SheetSection Cause(JobSheet sheet, UnitSystem units)
    {
        var causes = sheet.Causes.Select(finding => (finding.Gear, finding));
        var lines = new List<SheetLine>();
        foreach (var (gears, findings) in GearLabels.Group(causes, Gears(sheet.Found), GearsText.SameFinding.Instance))
        {
            lines.Add(new SheetLine(gears.Heading));
            lines.AddRange(findings.Select(finding => new SheetLine(
                $"{Words.Of(finding.Severity)}: {PhraseWords.Of(finding.Message, units, gearIsTold: true)} ({finding.Rule}{(finding.Place.File.Length > 0 ? $", {finding.Place}" : "")})", 1)));
        }

        if (sheet.Diagnosis is { } diagnosis) lines.AddRange(DiagnosisLines.Of(diagnosis, units));
        lines.AddRange(sheet.Given.NotUnderstood.Select(text => new SheetLine($"not diagnosed, since it is not understood: {text}")));
        if (lines.Count == 0)
            lines.Add(new SheetLine("none found: with these parts every gear does what its chart says. What is not hydraulic, and parts that are not as the file has them, were not computed."));
        return new SheetSection(SheetPart.Cause, "Cause", [.. lines]);
    }

    private static SheetSection Correction(JobSheet sheet, UnitSystem units)
    {
        var remedy = sheet.Remedy;
        if (remedy.IsRight)
        {
            return new SheetSection(SheetPart.Correction, "Correction", [new SheetLine(sheet.Diagnosis is { Report.Explaining.IsEmpty: false }
                ? "the revisions fit one another; make good what tests confirm of the causes above, and check every gear again"
                : "nothing to correct in the parts as found")]);
        }

        List<SheetLine> lines = [.. Offers("other parts", remedy.Parts, units), .. Offers("without other parts", remedy.Bench, units)];
        if (lines.Count == 0)
        {
            lines.Add(new SheetLine(string.Create(
                CultureInfo.InvariantCulture,
                $"nothing found: {remedy.PartSearch.Tried} choices of up to {remedy.PartSearch.Depth} parts, {remedy.BenchSearch.Plugs} plugs, {remedy.BenchSearch.Holes} holes, {remedy.BenchSearch.Balls} balls and {remedy.BenchSearch.Pairs} pairs of these were solved")));
        }

        return new SheetSection(SheetPart.Correction, "Correction", [.. lines]);
    }

    private static IEnumerable<SheetLine> Offers(string what, ImmutableArray<Remedy> offers, UnitSystem units)
    {
        foreach (var offer in offers.Take(MostOffers))
        {
            var undone = offer.CanBeUndone ? "" : "; cannot be undone";
            yield return new SheetLine($"{what}: {string.Join("; ", offer.Changes.Select(change => PhraseWords.Of(change.Text, units)))}. Solved in every gear: right{undone}");
            foreach (var left in offer.Leaves.DistinctBy(finding => (finding.Rule, finding.Message))) yield return new SheetLine($"leaves {left.Rule}: {PhraseWords.Of(left.Message, units)}", 1);
        }

        if (offers.Length > MostOffers) yield return new SheetLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {offers.Length - MostOffers} more"));
    }

    private static SheetSection Parts(AssemblyReport found, UnitSystem units)
    {
        var assembly = found.Assembly;
        var nearest = assembly.Unit.Matched.FirstOrDefault(set => found.NearestMatched.Contains(set.Name));
        var other = nearest is null ? null : Assembly.Of(assembly.Unit, nearest);
        ImmutableArray<string> heads = other is null ? ["part", "revision"] : ["part", "revision", $"in {nearest!.Name}"];
        var rows = assembly.Choice.Select((part, i) => other is null
            ? ImmutableArray.Create(part.Key, part.Value)
            : [part.Key, part.Value, other.Choice.ElementAt(i).Value == part.Value ? "the same" : other.Choice.ElementAt(i).Value]);
        return new SheetSection(SheetPart.Parts, "Parts as found", [.. assembly.Changes.Select(change => new SheetLine(PhraseWords.Of(change, units)))], new SheetTable(heads, [.. rows]));
    }

    private static SheetSection Evidence(AssemblyReport found, UnitSystem units)
    {
        var stops = found.Gears.SelectMany(gear => gear.Clutches.Where(clutch => clutch.StoppedAt is not null)
            .Select(clutch => ((string?)gear.Gear, $"{clutch.Clutch} stops at {clutch.StoppedAt!.Element}: {PhraseWords.Of(clutch.StoppedAt.Reason, units)} ({clutch.StoppedAt.Place})")));
        var lines = GearLabels.Group(stops, Gears(found)).SelectMany(group => group.Items.Select(stop => new SheetLine($"{Lower(group.Gears.Heading)}: {stop}")));
        var rows = found.Gears.Select(gear => ImmutableArray.Create(
            gear.Gear, Words.Of(gear.Verdict), On(gear), gear.Drive?.Ratio is { } ratio ? ratio.ToString("0.00", CultureInfo.InvariantCulture) : "-",
            gear.Drive is { } drive ? FeelWords.Of(drive.Feel, gearIsTold: true) : "-"));
        return new SheetSection(SheetPart.Evidence, "Evidence: every gear as computed", [.. lines], new SheetTable(["gear", "verdict", "clutches on", "ratio", "the driver feels"], [.. rows]));

        static string On(GearReport gear)
        {
            var on = gear.Clutches.Where(clutch => clutch.Strength != ClutchState.Released).Select(clutch => clutch.Strength == ClutchState.Weak ? $"{clutch.Clutch} (weak)" : clutch.Clutch).ToList();
            return on.Count > 0 ? string.Join(", ", on) : "none";
        }
    }

    /// <summary>What gauges should show once the first correction is made.</summary>
    private static SheetSection? Expected(JobSheet sheet, UnitSystem units)
    {
        var unit = sheet.Found.Assembly.Unit;
        if (unit.Taps.IsEmpty || sheet.Mended is not { } mended) return null;
        var title = sheet.Remedy.IsRight ? "Gauge ports with these parts" : "Gauge ports once the first correction is made";
        var rows = mended.Gears.Where(gear => gear.Settled).Select(gear => (ImmutableArray<string>)
        [
            gear.Gear, .. unit.Taps.Select(tap => gear.Pressures.FirstOrDefault(pressure => pressure.Passage == tap.At.Name.ToString()) is { } at
                ? Measures.PressureNumber(at.Kilopascals, units)
                : "-"),
        ]);
        return new SheetSection(
            SheetPart.Expected, $"{title}, {Measures.PressureUnit(units)}", [new SheetLine("as springs and commands of the file set them, with the pump giving enough; see pressures for hot idle")],
            new SheetTable(["gear", .. unit.Taps.Select(tap => tap.Name)], [.. rows]));
    }

    private static ImmutableArray<string> Gears(AssemblyReport report) => [.. report.Assembly.Unit.Gears.Select(gear => gear.Name)];

    /// <summary>A heading within a sentence: <c>gears 2, 3</c>.</summary>
    private static string Lower(string heading) => char.ToLowerInvariant(heading[0]) + heading[1..];
}
