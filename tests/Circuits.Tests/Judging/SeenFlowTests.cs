using System.Collections;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Stacking;
using Circuits.Tests.Demo;
using Circuits.Tests.Solving.Flow;
using Xunit;
using Assembly = Circuits.Model.Assembly;

namespace Circuits.Tests.Judging;

/// <summary>
/// In full mode assemblies with one fingerprint are taken for the same. So whatever is written of an element, of any kind, and comes out as other flow has
/// to change it. Each value of each element is varied here, whatever kinds and values there are, and what flow makes of it is compared.
/// </summary>
public sealed class SeenFlowTests
{
    /// <summary>How many changes of the same value that flow alone sees are tried: elements beyond are like those before.</summary>
    private const int MostAlike = 4;

    private static readonly Assembly Sound = WithTheRest(Assembly.DefaultOf(FullUnit.Unit));

    /// <summary>Every kind, by its name.</summary>
    public static TheoryData<string> Kinds() => new(typeof(IElementKinds<>).GetMethods().Select(method => method.Name));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Whatever_changes_flow_changes_the_fingerprint(string kind)
    {
        var (names, numbers) = (new NameNumbers(), SeenFlow.Numbers());
        var (flow, seen) = (FlowOf(Sound), Seen(Sound, names, numbers));
        var property = typeof(Revision).GetProperty(kind)!;
        var alike = new Dictionary<string, int>();
        for (var part = 0; part < Sound.Revisions.Length; part++)
        {
            foreach (var (value, what) in Others(property.GetValue(Sound.Revisions[part]), property.PropertyType, kind))
            {
                if (alike.GetValueOrDefault(what) == MostAlike) continue;
                var changed = Sound.With(Sound.Revisions.SetItem(part, (Revision)With(Sound.Revisions[part], property, value)));
                if (FlowOf(changed) == flow) continue;
                var its = Seen(changed, names, numbers);
                Assert.True(its != seen, $"{Sound.Unit.Parts[part].Name}: flow sees {what}, the fingerprint does not");

                // One that the static answer tells apart as well proves nothing of what is seen for flow.
                alike[what] = alike.GetValueOrDefault(what) + (its.Static == seen.Static ? 1 : 0);
            }
        }

        Assert.True(alike.Count > 0, $"nothing that was changed of {kind} changes flow");
    }

    [Fact]
    public void The_same_elements_have_the_same_fingerprint()
    {
        var (names, numbers) = (new NameNumbers(), SeenFlow.Numbers());
        Assert.Equal(Seen(Sound, names, numbers), Seen(Sound.With([.. Sound.Revisions.Select(revision => revision with { Marks = [] })]), names, numbers));
    }

    /// <summary>What no part of the full unit has in its first matched set: a screen, leaks, a clutch of its own.</summary>
    private static Assembly WithTheRest(Assembly assembly)
    {
        var i = assembly.Revisions.IndexOf(assembly.Revisions.First(revision => revision.Passages.Length > 1));
        var (part, revision) = (assembly.Unit.Parts[i], assembly.Revisions[i]);
        PassageUse Use(int passage) => new(new PassageName(part.Name, revision.Passages[passage].Name), revision.Place);
        var screen = new Screen("filter", Use(0), Use(1), new Shape.Cutout(new(40)), revision.Place) { Bypass = new Bypass(new(80), new Shape.Cutout(new(20)), revision.Place) };
        return assembly.With(assembly.Revisions.SetItem(i, revision with
        {
            Screens = [screen],
            Leaks = [new Leak(Use(0), Use(1), new Shape.RoundGap(new(12), new(0.03), new(8), 0.5), revision.Place), new Leak(Use(0), Use(1), new Shape.Cutout(new(2)), revision.Place)],
            Clutches = [assembly.Unit.Clutches[0]],
        }));
    }

    /// <summary>Without metal, as a matrix builds it: no answer hangs on that.</summary>
    private static Network Open(Assembly assembly) => NetworkBuilder.BuildOpen(assembly, joint => JointStacker.Stack(assembly, joint, (_, _) => { }));

    /// <summary>What a matrix takes for the assembly in full mode.</summary>
    private static (UInt128 Static, UInt128 Flow) Seen(Assembly assembly, NameNumbers names, ConcurrentDictionary<object, int> numbers)
    {
        var network = Open(assembly);
        var bytes = new ByteList();
        var whole = SeenNetwork.Of(network, [.. assembly.Unit.Gears.Select(gear => GearInputs.Of(network, gear))], names, bytes).Whole;
        bytes.Clear();
        SeenFlow.Add(assembly, numbers, bytes);
        return (whole, Fingerprints.Key(bytes.Written));
    }

    /// <summary>Everything that is compiled for flow and time, and what its judge reads of clutches, as text.</summary>
    private static string FlowOf(Assembly assembly)
    {
        var network = Open(assembly);
        var text = new StringBuilder();
        Write(FlowDrafter.Compile(network), text);
        foreach (var clutch in network.Clutches) Write(clutch.Clutch, text);
        return text.ToString();
    }

    private static void Write(object? value, StringBuilder text)
    {
        switch (value)
        {
            case null or string or Place or Assumption or SparsePattern:
                break;
            case Func<FlowConditions, double, LinkFlow> law:
                foreach (var difference in new[] { 1e3, 1e5 }) Write(law(FlowCase.Pumped, difference), text);
                break;
            case IEnumerable several:
                foreach (var each in several) Write(each, text.Append(','));
                break;
            case IFormattable plain when value.GetType().IsPrimitive || value is Enum:
                text.Append(plain.ToString(null, CultureInfo.InvariantCulture)).Append(' ');
                break;
            case bool is_:
                text.Append(is_).Append(' ');
                break;
            case System.Runtime.CompilerServices.ITuple tuple:
                for (var i = 0; i < tuple.Length; i++) Write(tuple[i], text);
                break;
            default:
                foreach (var property in value.GetType().GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(property => property.SetMethod is not null))
                    Write(property.GetValue(value), text.Append(property.Name).Append(' '));
                break;
        }
    }

    /// <summary>A value in every other way it can be: its numbers and choices, and those of all that belongs to it. What it names, and where it is written, stays.</summary>
    private static IEnumerable<(object? Value, string What)> Others(object? value, Type type, string what)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        if (plain == typeof(string) || plain == typeof(Place)) yield break;
        if (value is null)
        {
            if (plain.IsEnum) foreach (var other in Enum.GetValues(plain)) yield return (other, $"{what} {other}");
            else if (plain.IsAssignableTo(typeof(IQuantity)) || plain == typeof(double) || plain == typeof(int)) yield return (Some(plain), $"{what} where there was none");
            yield break;
        }

        if (value is Shape shape)
        {
            foreach (var other in Shapes(shape)) yield return (other, $"{what} as {other.GetType().Name}");
        }

        switch (value)
        {
            case double number:
                yield return ((0.9 * number) + 0.01, what);
                break;
            case int number:
                yield return (number + 1, what);
                break;
            case bool is_:
                yield return (!is_, what);
                break;
            case Enum:
                foreach (var other in Enum.GetValues(plain)) if (!other.Equals(value)) yield return (other, $"{what} {other}");
                break;
            case IList list when plain.IsGenericType && plain.GetGenericTypeDefinition() == typeof(ImmutableArray<>):
                var set = plain.GetMethod("SetItem")!;
                for (var i = 0; i < list.Count; i++)
                {
                    foreach (var (other, its) in Others(list[i], plain.GetGenericArguments()[0], what)) yield return (set.Invoke(value, [i, other]), its);
                    yield return (plain.GetMethod("RemoveAt")!.Invoke(value, [i]), $"one less of {what}");
                }

                break;
            default:
                foreach (var property in value.GetType().GetProperties().Where(property => property.SetMethod is not null))
                {
                    foreach (var (other, its) in Others(property.GetValue(value), property.PropertyType, $"{what}.{property.Name}")) yield return (With(value, property, other), its);
                }

                break;
        }
    }

    /// <summary>A size of one, of whatever it is a size.</summary>
    private static object Some(Type type) => type == typeof(double) ? 1.0 : type == typeof(int) ? 1 : Activator.CreateInstance(type, 1.0)!;

    /// <summary>Other shapes of the same area, which the static answer does not tell from it.</summary>
    private static IEnumerable<Shape> Shapes(Shape shape)
    {
        var area = shape.Area ?? new Area(1);
        var hole = new Shape.Hole(area.HoleDiameter, "");
        Shape[] all =
        [
            hole, hole with { Depth = new(10) }, new Shape.Slot(new(1), new(area.SquareMillimetres)), new Shape.Cutout(area),
            new Shape.FlatGap(new(area.SquareMillimetres), new(1), new(10)), Shape.Unsized.Instance,
        ];
        return all.Where(other => !other.Equals(shape));
    }

    private static object With(object item, PropertyInfo property, object? value)
    {
        var clone = typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.Invoke(item, null)!;
        property.SetValue(clone, value);
        return clone;
    }
}
