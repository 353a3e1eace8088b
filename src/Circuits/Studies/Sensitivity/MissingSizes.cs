using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Solving.Flow;
using Circuits.Solving.Oil;
using Circuits.Stacking;

namespace Circuits.Studies.Sensitivity;

/// <summary>Every size that an assembly needs for flow and its file does not give, and the assembly with another one.</summary>
internal static class MissingSizes
{
    private const double Colder = 20;

    /// <summary>The sizes, part by part, then those of the whole unit.</summary>
    public static IEnumerable<MissingSize> Of(Assembly assembly)
    {
        for (var i = 0; i < assembly.Revisions.Length; i++)
        {
            foreach (var size in OfPart(assembly, i)) yield return size;
        }

        foreach (var size in OfClutches(assembly).Concat(OfPump(assembly)).Concat(OfOil(assembly))) yield return size;
    }

    private static IEnumerable<MissingSize> OfPart(Assembly assembly, int part)
    {
        var revision = assembly.Revisions[part];
        var name = assembly.Unit.Parts[part].Name;
        foreach (var valve in revision.Valves)
        {
            if (valve.Rest.Concat(valve.Moved).Any(port => port.Area is null))
                yield return Size($"ports of {name}.{valve.Name}", Defaults.SpoolPortArea, "mm2", Each(valve, (item, area) => item with { Rest = Ports(item.Rest, area), Moved = Ports(item.Moved, area) }));
            if (valve.MovedBy.Concat(valve.HeldBy).OfType<SpoolForce.Signal>().Any(signal => signal.Area is null))
                yield return Size($"signal lands of {name}.{valve.Name}", Defaults.SignalArea, "mm2", Each(valve, (item, area) => item with { MovedBy = Lands(item.MovedBy, area), HeldBy = Lands(item.HeldBy, area) }));
        }

        if (revision.Lever.Any(position => position.Ports.Any(port => port.Area is null)))
        {
            yield return Size($"ports of {name}.lever", Defaults.SpoolPortArea, "mm2", area =>
                revision with { Lever = [.. revision.Lever.Select(position => position with { Ports = Ports(position.Ports, area) })] });
        }

        foreach (var regulator in revision.Regulators.Where(regulator => regulator.PortArea is null))
        {
            yield return Size($"ports of {name}.{regulator.Name}", Defaults.RegulatorPortArea, "mm2", area =>
                revision with { Regulators = [.. revision.Regulators.Select(item => item.Name == regulator.Name ? item with { PortArea = new Area(area) } : item)] });
        }

        foreach (var solenoid in revision.Solenoids.Where(solenoid => solenoid.PortArea is null))
        {
            yield return Size($"ports of {name}.{solenoid.Name}", Defaults.SolenoidPortArea, "mm2", area =>
                revision with { Solenoids = [.. revision.Solenoids.Select(item => item.Name == solenoid.Name ? item with { PortArea = new Area(area) } : item)] });
        }

        foreach (var opening in revision.Openings.Where(opening => opening.Shape.Area is null))
        {
            yield return Size($"opening {name}@{string.Join('-', opening.At.Select(at => at.Name))}", Defaults.OpeningArea, "mm2", area =>
                revision with { Openings = revision.Openings.Replace(opening, opening with { Shape = new Shape.Cutout(new Area(area)) }) });
        }

        foreach (var item in revision.Restrictions.Where(item => item.Shape.Area is null))
        {
            yield return Size($"restriction between {item.A.Name} and {item.B.Name}", Defaults.OpeningArea, "mm2", area =>
                revision with { Restrictions = revision.Restrictions.Replace(item, item with { Shape = new Shape.Cutout(new Area(area)) }) });
        }

        foreach (var item in revision.Leaks.Where(item => item.Shape.Area is null))
        {
            yield return Size($"leak between {item.A.Name} and {item.B.Name}", Defaults.LeakArea, "mm2", area =>
                revision with { Leaks = revision.Leaks.Replace(item, item with { Shape = new Shape.Cutout(new Area(area)) }) });
        }

        MissingSize Size(string what, double value, string unit, Func<double, Revision> rewrite) =>
            Doubled(what, value, unit, size => assembly.With(assembly.Revisions.SetItem(part, rewrite(size))));

        Func<double, Revision> Each(Valve valve, Func<Valve, double, Valve> rewrite) => area =>
            revision with { Valves = [.. revision.Valves.Select(item => item.Name == valve.Name ? rewrite(item, area) : item)] };
    }

    private static ImmutableArray<Port> Ports(ImmutableArray<Port> ports, double area) =>
        [.. ports.Select(port => port.Area is null ? port with { Area = new Area(area) } : port)];

    private static ImmutableArray<SpoolForce> Lands(ImmutableArray<SpoolForce> forces, double area) =>
        [.. forces.Select(force => force is SpoolForce.Signal { Area: null } signal ? signal with { Area = new Area(area) } : force)];

    private static IEnumerable<MissingSize> OfClutches(Assembly assembly)
    {
        foreach (var whole in assembly.Unit.Clutches)
        {
            // What a part says of a clutch is laid over what the unit says.
            var clutch = assembly.Revisions.SelectMany(revision => revision.Clutches).Where(change => change.Name == whole.Name)
                .Aggregate(whole, (all, change) => all.With(change));
            var sizes = new ClutchSizes(clutch);
            if (clutch.Area is null) yield return Size("piston area", sizes.Area, "mm2", value => whole with { Area = new Area(value) });
            if (clutch.Stroke is null && clutch.Fill is null) yield return Size("fill volume", sizes.Fill, "mL", value => whole with { Fill = new Volume(value) });
            if (clutch.ReturnSpring is null) yield return Size("return spring", sizes.Spring, "N", value => whole with { ReturnSpring = new Force(value) });
            if (clutch.Rate is null) yield return Size("return spring rate", sizes.Rate, "N/mm", value => whole with { Rate = new SpringRate(value) });
            if (clutch.PackRate is null) yield return Size("stiffness of the plates", sizes.PackRate, "N/mm", value => whole with { PackRate = new SpringRate(value) });
            if (clutch.Plates is null) yield return Size("friction faces", sizes.Plates, "", value => whole with { Plates = (int)value });
            if (clutch.Friction is null) yield return Size("friction", sizes.Friction, "", value => whole with { Friction = value });
            if (clutch.Radius is null) yield return Size("mean radius", sizes.Radius, "mm", value => whole with { Radius = new Length(value) });

            MissingSize Size(string what, double value, string unit, Func<double, Clutch> rewrite) => Doubled(
                $"{what} of clutch {whole.Name}", value, unit,
                size => assembly.In(assembly.Unit with { Clutches = assembly.Unit.Clutches.Replace(whole, rewrite(size)) }));
        }
    }

    private static IEnumerable<MissingSize> OfPump(Assembly assembly)
    {
        if (assembly.Unit.Pump is not { } pump) yield break;
        if (pump.Displacement is null) yield return Size("displacement", FlowDefaults.Displacement, "mL/rev", value => pump with { Displacement = new Displacement(value) });
        if (pump.Efficiency is null)
        {
            yield return new MissingSize(
                "volumetric efficiency of the pump", FormattableString.Invariant($"{FlowDefaults.Efficiency}"), "0.7", "1",
                way => assembly.In(assembly.Unit with { Pump = pump with { Efficiency = way < 0 ? 0.7 : 1 } }));
        }

        MissingSize Size(string what, double value, string unit, Func<double, Pump> rewrite) =>
            Doubled($"{what} of the pump", value, unit, size => assembly.In(assembly.Unit with { Pump = rewrite(size) }));
    }

    private static IEnumerable<MissingSize> OfOil(Assembly assembly)
    {
        var unit = assembly.Unit;
        var fluid = unit.Fluid ?? new Fluid(null, null, [], null, unit.Place);
        if (fluid.Viscosities.IsEmpty && fluid.Grade is null)
            yield return Oil("grade of the oil", $"ISO VG {OilDefaults.Grade}", "ISO VG 22", "ISO VG 46", way => fluid with { Grade = way < 0 ? 22 : 46 });
        if (fluid.Viscosities.IsEmpty && fluid.ViscosityIndex is null)
            yield return Oil("viscosity index of the oil", FormattableString.Invariant($"{OilDefaults.Index}"), "60", "180", way => fluid with { ViscosityIndex = way < 0 ? 60 : 180 });
        if (fluid.Density is null)
            yield return Oil("density of the oil", FormattableString.Invariant($"{OilDefaults.Density} kg/m3"), "830 kg/m3", "900 kg/m3", way => fluid with { Density = new Density(way < 0 ? 830 : 900) });
        if (fluid.Temperature is null)
        {
            yield return Oil(
                "temperature of the oil", FormattableString.Invariant($"{OilDefaults.Temperature} degC"), "20 degC less", "20 degC more",
                way => fluid with { Temperature = new Temperature(OilDefaults.Temperature + (way * Colder)) });
        }

        MissingSize Oil(string what, string assumed, string less, string more, Func<int, Fluid> rewrite) =>
            new(what, assumed, less, more, way => assembly.In(unit with { Fluid = rewrite(way) }));
    }

    private static MissingSize Doubled(string what, double value, string unit, Func<double, Assembly> rewrite) => new(
        what, FormattableString.Invariant($"{value:0.##} {unit}").TrimEnd(), "half", "double", way => rewrite(way < 0 ? value / 2 : value * 2));
}
