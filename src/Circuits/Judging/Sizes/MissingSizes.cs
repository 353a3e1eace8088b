using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Solving.Flow;
using Circuits.Solving.Oil;

namespace Circuits.Judging.Sizes;

/// <summary>Every size that an assembly needs for flow and its file does not give, and the assembly with another one.</summary>
internal sealed partial class MissingSizes : IElementKinds<(Part Part, Revision Revision)>
{
    private const double Colder = 20;

    private readonly Assembly assembly;
    private readonly List<MissingSize> found = [];

    private MissingSizes(Assembly assembly) => this.assembly = assembly;

    /// <summary>The sizes, part by part, then those of the whole unit.</summary>
    public static IEnumerable<MissingSize> Of(Assembly assembly)
    {
        var sizes = new MissingSizes(assembly);
        for (var i = 0; i < assembly.Revisions.Length; i++) sizes.Each((assembly.Unit.Parts[i], assembly.Revisions[i]));
        return [.. sizes.found, .. OfClutches(assembly), .. OfPump(assembly), .. OfOil(assembly)];
    }

    public void Passages((Part Part, Revision Revision) fitted) { } // a track without length and section is as wide as need be

    public void Balls((Part Part, Revision Revision) fitted) { } // a ball without a diameter closes its seats

    public void Accumulators((Part Part, Revision Revision) fitted) { } // one without area and stroke takes up nothing, half as much or twice

    public void Clutches((Part Part, Revision Revision) fitted) { } // counted once, with what all parts change of them

    /// <summary>A size that is missing in a part, and the part with it.</summary>
    private void Add((Part Part, Revision Revision) fitted, string what, double value, Dimension dimension, Func<double, Revision> rewrite)
    {
        var part = assembly.Unit.Parts.IndexOf(fitted.Part);
        found.Add(Doubled(what, value, dimension, size => assembly.With(assembly.Revisions.SetItem(part, rewrite(size)))));
    }

    private static IEnumerable<MissingSize> OfPump(Assembly assembly)
    {
        if (assembly.Unit.Pump is not { } pump) yield break;
        if (pump.Displacement is null) yield return Size("displacement", FlowDefaults.Displacement, Dimension.Displacement, value => pump with { Displacement = new Displacement(value) });
        if (pump.Efficiency is null)
        {
            yield return new MissingSize(
                "volumetric efficiency of the pump", Phrase.Of($"{new Share(FlowDefaults.Efficiency)}"), Phrase.Of($"{new Share(0.7)}"), Phrase.Of($"{new Share(1)}"),
                way => assembly.In(assembly.Unit with { Pump = pump with { Efficiency = way < 0 ? 0.7 : 1 } }));
        }

        MissingSize Size(string what, double value, Dimension dimension, Func<double, Pump> rewrite) =>
            Doubled($"{what} of the pump", value, dimension, size => assembly.In(assembly.Unit with { Pump = rewrite(size) }));
    }

    private static IEnumerable<MissingSize> OfOil(Assembly assembly)
    {
        var unit = assembly.Unit;
        var fluid = unit.Fluid ?? new Fluid(null, null, [], null, unit.Place);
        if (fluid.Viscosities.IsEmpty && fluid.Grade is null)
            yield return Oil("grade of the oil", Phrase.Of($"ISO VG {(int)OilDefaults.Grade}"), Phrase.Of($"ISO VG 22"), Phrase.Of($"ISO VG 46"), way => fluid with { Grade = way < 0 ? 22 : 46 });
        if (fluid.Viscosities.IsEmpty && fluid.ViscosityIndex is null)
            yield return Oil("viscosity index of the oil", Phrase.Of($"{(int)OilDefaults.Index}"), Phrase.Of($"60"), Phrase.Of($"180"), way => fluid with { ViscosityIndex = way < 0 ? 60 : 180 });
        if (fluid.Density is null)
            yield return Oil("density of the oil", Phrase.Of($"{new Density(OilDefaults.Density)}"), Phrase.Of($"{new Density(830)}"), Phrase.Of($"{new Density(900)}"), way => fluid with { Density = new Density(way < 0 ? 830 : 900) });
        if (fluid.Temperature is null)
        {
            yield return Oil(
                "temperature of the oil", Phrase.Of($"{new Temperature(OilDefaults.Temperature)}"), Phrase.Of($"{new Temperature(OilDefaults.Temperature - Colder)}"), Phrase.Of($"{new Temperature(OilDefaults.Temperature + Colder)}"),
                way => fluid with { Temperature = new Temperature(OilDefaults.Temperature + (way * Colder)) });
        }

        MissingSize Oil(string what, Phrase assumed, Phrase less, Phrase more, Func<int, Fluid> rewrite) =>
            new(what, assumed, less, more, way => assembly.In(unit with { Fluid = rewrite(way) }));
    }

    private static MissingSize Doubled(string what, double value, Dimension dimension, Func<double, Assembly> rewrite) => new(
        what, Phrase.Of($"{new Quantity(dimension, value)}"), Phrase.Of($"half"), Phrase.Of($"double"), way => rewrite(way < 0 ? value / 2 : value * 2));
}
