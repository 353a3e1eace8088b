// What for: the library used from a program: which gears does each assembly of one changed part lose?
// How to run: dotnet run --project examples/library -- circuits/rill/rill.yaml plate
// What it prints: a line for each revision of the part on each matched set: the gears that are not as charted.
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;

if (args is not [var file, var partName])
{
    Console.Error.WriteLine("usage: library UNIT.yaml PART");
    return 2;
}

var read = CircuitReader.ReadFile(file);
foreach (var finding in read.Findings) Console.Error.WriteLine($"{finding.Place}: {finding.Rule}: {finding.Message}");
if (read.Unit is not { } unit) return 2;
if (unit.FindPart(partName) is not { } part)
{
    Console.Error.WriteLine($"{file} has no part {partName}");
    return 2;
}

// The judge solves the matched sets once and holds every other assembly against them.
var judge = new UnitJudge(unit);
var index = unit.Parts.IndexOf(part);
foreach (var set in unit.Matched)
{
    foreach (var revision in part.Revisions)
    {
        var assembly = Assembly.Of(unit, Assembly.Of(unit, set).Revisions.SetItem(index, revision));
        var report = judge.Report(assembly);
        var wrong = report.Gears.Where(gear => gear.Verdict != Verdict.AsCharted).Select(gear => $"{gear.Gear} {gear.Verdict}");
        Console.WriteLine($"{set.Name} with {part.Name} {revision.Name}: {(wrong.Any() ? string.Join(", ", wrong) : "as charted")}");
    }
}

return 0;
