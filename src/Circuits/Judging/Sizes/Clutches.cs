using Circuits.Model;
using Circuits.Quantities;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Sizes;

internal sealed partial class MissingSizes
{
    private static IEnumerable<MissingSize> OfClutches(Assembly assembly)
    {
        foreach (var whole in assembly.Unit.Clutches)
        {
            var clutch = whole.In(assembly);
            var sizes = new ClutchSizes(clutch);
            if (clutch.Area is null) yield return Size("piston area", sizes.Area, Dimension.Area, value => whole with { Area = new Area(value) });
            if (clutch.Stroke is null && clutch.Fill is null) yield return Size("fill volume", sizes.Fill, Dimension.Volume, value => whole with { Fill = new Volume(value) });
            if (clutch.ReturnSpring is null) yield return Size("return spring", sizes.Spring, Dimension.Force, value => whole with { ReturnSpring = new Force(value) });
            if (clutch.Rate is null) yield return Size("return spring rate", sizes.Rate, Dimension.SpringRate, value => whole with { Rate = new SpringRate(value) });
            if (clutch.PackRate is null) yield return Size("stiffness of the plates", sizes.PackRate, Dimension.SpringRate, value => whole with { PackRate = new SpringRate(value) });
            if (clutch.Plates is null) yield return Size("friction faces", sizes.Plates, Dimension.Ratio, value => whole with { Plates = (int)value });
            if (clutch.Friction is null) yield return Size("friction", sizes.Friction, Dimension.Ratio, value => whole with { Friction = value });
            if (clutch.Radius is null) yield return Size("mean radius", sizes.Radius, Dimension.Length, value => whole with { Radius = new Length(value) });

            MissingSize Size(string what, double value, Dimension dimension, Func<double, Clutch> rewrite) => Doubled(
                $"{what} of clutch {whole.Name}", value, dimension,
                size => assembly.In(assembly.Unit with { Clutches = assembly.Unit.Clutches.Replace(whole, rewrite(size)) })) with
            {
                Clutch = whole.Name,
            };
        }
    }
}
