using System.Collections.Immutable;
using CsCheck;

namespace Circuits.Tests.Properties;

/// <summary>
/// Random small units: two or three castings, sheets between them, a pump with its regulator, and at most ten elements
/// that move. Every name occurs once in a unit, apart from passages that share a circuit.
/// </summary>
/// <param name="revisions">Whether parts may have a second revision.</param>
internal sealed class UnitGen(bool revisions) : Gen<UnitSpec>
{
    public override UnitSpec Generate(PCG pcg, Size? min, out Size size)
    {
        var unit = new UnitDraft(new Dice(pcg)).Draw(revisions);
        size = new Size((ulong)SpecText.Of(unit).Length);
        return unit;
    }
}

/// <summary>One unit while it is being drawn at random.</summary>
internal sealed class UnitDraft(Dice dice)
{
    private readonly List<Casting> castings = [];
    private readonly List<JointSpec> joints = [];
    private readonly List<PartSpec> sheets = [];
    private int counter;

    public UnitSpec Draw(bool revisions)
    {
        DrawCastings();
        DrawJoint("j1", castings[0], castings[1], dice.Pick(["", "P", "P", "P", "GP", "PG", "GPG", "PP", "G"]));
        if (castings.Count > 2) DrawJoint("j2", castings[dice.Next(2)], castings[2], dice.Pick(["P", "P", "", "GP"]));
        foreach (var sheet in sheets) SizeSheet(sheet);
        var elements = new ElementDraft(dice, castings, Name);
        elements.Draw();
        ImmutableArray<PartSpec> parts =
        [
            .. castings.Select(casting => new PartSpec(casting.Name, "casting", [elements.Revision(casting)])),
            .. sheets.Select(sheet => sheet with { Revisions = [sheet.Revisions[0] with { Openings = [.. openings[sheet.Name]] }] }),
            .. elements.Packs(),
        ];
        var unit = new UnitSpec("Drawn")
        {
            Joints = [.. joints],
            Pump = new PumpSpec(elements.PumpInto, dice.Chance(50) ? dice.Real(900, 1800) : null),
            Parts = parts,
            Clutches = [.. elements.Clutches()],
        };
        unit = unit with { Gears = [.. elements.Gears(unit)] };
        if (revisions) unit = unit with { Parts = [.. parts.Select(part => dice.Chance(45) ? new Mutation(dice, unit).Second(part, Name) : part)] };
        var sets = new List<MatchedSpec> { new("t1", unit.FirstChoice) };
        if (revisions && dice.Chance(40)) sets.Add(new MatchedSpec("t2", [.. unit.Parts.Select(part => part.Revisions[^1].Name)]));
        return unit with { Matched = [.. sets.DistinctBy(set => string.Join(',', set.Revisions))] };
    }

    private readonly Dictionary<string, List<OpeningSpec>> openings = [];

    private string Name(string prefix) => $"{prefix}{++counter}";

    private void DrawCastings()
    {
        var count = dice.Chance(30) ? 3 : 2;
        for (var i = 0; i < count; i++)
        {
            var casting = new Casting($"c{i + 1}");
            castings.Add(casting);
            if (i == 0) casting.Add("p0");
            if (i == 1 && dice.Chance(50)) casting.Add("p0");
            var own = dice.Between(3, i == 0 ? 7 : 5);
            for (var k = 0; k < own; k++)
            {
                var shared = i > 0 && dice.Chance(50) ? dice.Pick(castings[0].Passages).Name : null;
                if (shared is not null && !casting.Has(shared)) casting.Add(shared);
                else casting.Add(Name("p"));
            }
        }
    }

    private void DrawJoint(string name, Casting upper, Casting lower, string layers)
    {
        var locations = Enumerable.Range(0, dice.Between(4, 9)).Select(_ => Name("x")).ToList();
        foreach (var location in locations)
        {
            var solid = dice.Next(10);
            if (solid != 0) dice.Pick(upper.Passages).At.Add((name, location));
            if (solid != 1) dice.Pick(lower.Passages).At.Add((name, location));
        }

        var names = new List<string>();
        foreach (var layer in layers)
        {
            var sheet = Name(layer == 'P' ? "h" : "w");
            names.Add(sheet);
            sheets.Add(new PartSpec(sheet, "sheet", [new RevisionSpec("r1") { IsGasket = layer == 'G' }]));
            openings[sheet] = [];
        }

        joints.Add(new JointSpec(name, upper.Name, lower.Name, [.. names]));
        locationsOf[name] = locations;
    }

    private readonly Dictionary<string, List<string>> locationsOf = [];

    private void SizeSheet(PartSpec sheet)
    {
        var locations = locationsOf[joints.Find(joint => joint.Sheets.Contains(sheet.Name))!.Name];
        var list = openings[sheet.Name];
        if (sheet.Revisions[0].IsGasket)
        {
            if (dice.Chance(40)) list.Add(new OpeningSpec([.. dice.Shuffle(locations).Take(dice.Between(1, 2))], SizeSpec.Slot(dice.Real(1, 4), dice.Real(5, 15))));
            return;
        }

        foreach (var location in locations)
        {
            if (dice.Chance(15)) continue;
            list.Add(new OpeningSpec([location], Size()));
            if (dice.Chance(8)) list.Add(new OpeningSpec([location], SizeSpec.Hole(dice.Real(0.6, 3))));
        }

        for (var slots = dice.Next(3); slots > 0; slots--)
        {
            var spanned = dice.Shuffle(locations).Take(dice.Between(2, 3)).ToImmutableArray();
            if (dice.Chance(50)) list.RemoveAll(opening => opening.At.Any(spanned.Contains));
            list.Add(new OpeningSpec(spanned, SizeSpec.Slot(dice.Real(1, 4), dice.Real(5, 15))));
        }
    }

    private SizeSpec Size() => dice.Next(10) switch
    {
        0 => SizeSpec.Of(dice.Real(0.5, 30)),
        1 => SizeSpec.Slot(dice.Real(1, 3), dice.Real(4, 10)),
        2 => SizeSpec.Hole(dice.Real(6.4, 9)),
        _ => SizeSpec.Hole(dice.Real(0.8, 6)),
    };
}

/// <summary>A casting while it is being drawn.</summary>
internal sealed class Casting(string name)
{
    public string Name { get; } = name;

    public List<(string Name, List<(string Joint, string Location)> At)> Passages { get; } = [];

    public void Add(string passage) => Passages.Add((passage, []));

    public bool Has(string passage) => Passages.Exists(own => own.Name == passage);

    public Ref Of(string passage) => new(Name, passage);
}
