using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>
/// A matrix takes assemblies with one fingerprint for the same. So whatever the static answer takes from a network's elements has to change it; each
/// property of each kind of element is varied here, whatever properties there are.
/// </summary>
public sealed class SeenNetworkTests
{
    /// <summary>What changes no answer, and why.</summary>
    private static readonly Dictionary<string, string> Unseen = new()
    {
        ["Node.Place"] = "where a file writes it",
        ["Link.Part"] = "whose it is",
        ["Link.Revision"] = "whose it is",
        ["Link.Detail"] = "its size in words",
        ["Link.Place"] = "where a file writes it",
        ["Link.Shape"] = "its area counts; its shape does in flow",
        ["SpoolElement.Source"] = "what the answer takes of it stands beside it",
        ["BallElement.Name"] = "no row of a matrix names it",
        ["BallElement.Source"] = "its links have what it leaves open",
        ["RegulatorElement.Name"] = "no row of a matrix names it",
        ["RegulatorElement.Solenoid"] = "what it is told is the gear's",
        ["RegulatorElement.Place"] = "where a file writes it",
        ["RegulatorElement.Spills"] = "the first of them counts, which stands beside it; the others do in flow",
        ["RegulatorElement.Spool"] = "its slope counts in flow",
        ["SwitchElement.Source"] = "what it is told is the gear's",
        ["ClutchElement.Clutch"] = "what the answer takes of it stands beside it",
        ["AccumulatorElement.Name"] = "no row of a matrix names it",
        ["AccumulatorElement.Source"] = "its spring counts in time",
        ["ScreenElement.Name"] = "no row of a matrix names it",
        ["ScreenElement.Source"] = "what its mesh leaves open is a link, what its bypass does a regulator",
        ["StuckElement.Name"] = "its links say what it leaves open",
        ["StuckElement.How"] = "its links say what it leaves open",
        ["StuckElement.Place"] = "where a file writes it",
    };

    private static readonly Network Network = NetworkBuilder.Build(WithScreen(Model.Assembly.DefaultOf(FullUnit.Unit)));

    private static readonly ImmutableArray<GearInputs> Inputs = [.. FullUnit.Unit.Gears.Select(gear => GearInputs.Of(Network, gear))];

    private static readonly NameNumbers Names = new();

    private static readonly SeenNetwork Sound = Seen(Network);

    /// <summary>The lists of elements that a network has.</summary>
    private static IEnumerable<PropertyInfo> Lists => typeof(Network).GetProperties().Where(property => property.PropertyType.IsGenericType
        && property.PropertyType.GetGenericTypeDefinition() == typeof(ImmutableArray<>) && property.PropertyType.GetGenericArguments()[0].Namespace == typeof(Network).Namespace
        && property.Name != nameof(Network.Assumptions));

    /// <summary>Every property; an index is the element's place in its list, which nothing else may say.</summary>
    public static TheoryData<string, string> Properties() => new(
        from list in Lists
        from property in list.PropertyType.GetGenericArguments()[0].GetProperties()
        where property.SetMethod is not null && property.Name != nameof(Node.Index)
        select (list.Name, property.Name));

    [Theory]
    [MemberData(nameof(Properties))]
    public void Whatever_the_answer_takes_of_an_element_changes_the_fingerprint(string list, string property)
    {
        var its = typeof(Network).GetProperty(list)!;
        var type = its.PropertyType.GetGenericArguments()[0];
        if (Unseen.ContainsKey($"{type.Name}.{property}")) return;
        var elements = (IList)its.GetValue(Network)!;
        Assert.True(elements.Count > 0, $"the full unit has no {list}");
        var tried = 0;
        for (var i = 0; i < elements.Count; i++)
        {
            if (elements[i] is Link { Gate.Kind: GateKind.Shut }) continue;
            foreach (var (element, what) in Varied(elements[i]!, type.GetProperty(property)!))
            {
                var seen = Seen(With(its, i, element));
                Assert.True(seen.Whole != Sound.Whole, $"{list} {i}: {property} {what} does not change the whole fingerprint");
                var gears = seen.Gears.Zip(Sound.Gears).Count(pair => pair.First != pair.Second);
                Assert.True(elements[i] is Link ? gears > 0 : gears == Inputs.Length, $"{list} {i}: {property} {what} changes the fingerprints of {gears} gears");
                tried++;
            }
        }

        Assert.True(tried > 0, $"no way to vary {property} of {list}");
    }

    [Theory]
    [MemberData(nameof(Properties))]
    public void What_is_said_to_change_nothing_is_not_seen(string list, string property)
    {
        var its = typeof(Network).GetProperty(list)!;
        var type = its.PropertyType.GetGenericArguments()[0];
        if (!Unseen.ContainsKey($"{type.Name}.{property}")) return;
        var elements = (IList)its.GetValue(Network)!;
        foreach (var (element, what) in elements.Count == 0 ? [] : Varied(elements[0]!, type.GetProperty(property)!))
            Assert.True(Seen(With(its, 0, element)).Whole == Sound.Whole, $"{list}: {property} {what} changes the fingerprint; take it off the list");
    }

    [Fact]
    public void Nothing_is_said_of_what_there_is_not()
    {
        var there = Lists.Select(list => list.PropertyType.GetGenericArguments()[0]).SelectMany(type => type.GetProperties().Select(property => $"{type.Name}.{property.Name}"));
        Assert.Empty(Unseen.Keys.Except(there));
    }

    /// <summary>The full unit has one element of every kind but a screen.</summary>
    private static Model.Assembly WithScreen(Model.Assembly assembly)
    {
        var i = assembly.Revisions.IndexOf(assembly.Revisions.First(revision => revision.Passages.Length > 1));
        var (part, revision) = (assembly.Unit.Parts[i], assembly.Revisions[i]);
        PassageUse Use(int passage) => new(new PassageName(part.Name, revision.Passages[passage].Name), revision.Place);
        var bypass = new Bypass(new(80), Shape.Unsized.Instance, revision.Place);
        return assembly.With(assembly.Revisions.SetItem(i, revision with { Screens = [new Screen("filter", Use(0), Use(1), Shape.Unsized.Instance, revision.Place) { Bypass = bypass }] }));
    }

    private static SeenNetwork Seen(Network network) => SeenNetwork.Of(network, Inputs, Names, new ByteList());

    private static Network With(PropertyInfo list, int index, object element)
    {
        var elements = list.GetValue(Network)!;
        var set = elements.GetType().GetMethod("SetItem")!;
        var clone = Clone(Network);
        list.SetValue(clone, set.Invoke(elements, [index, element]));
        return (Network)clone;
    }

    private static object Clone(object item) =>
        typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.Invoke(item, null)!;

    /// <summary>The element with another value of a property, for every way in which such a value can be another.</summary>
    private static IEnumerable<(object Element, string What)> Varied(object element, PropertyInfo property)
    {
        foreach (var (value, what) in Others(property.GetValue(element), property.PropertyType))
        {
            var clone = Clone(element);
            property.SetValue(clone, value);
            yield return (clone, what);
        }
    }

    private static IEnumerable<(object? Value, string What)> Others(object? value, Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        switch (value)
        {
            case int number:
                yield return (number + 1, $"{number} + 1");
                break;
            case double number when double.IsFinite(number):
                yield return ((2 * number) + 1, $"twice {number}");
                break;
            case double:
                yield return (1.0, "1 in place of any");
                break;
            case string text:
                yield return (text + "-", text + "-");
                break;
            case null when plain == typeof(string):
                yield return ("-", "something in place of nothing");
                break;
            case null when plain.IsEnum:
                foreach (var other in Enum.GetValues(plain)) yield return (other, $"{other}");
                break;
            case Enum:
                foreach (var other in Enum.GetValues(plain)) if (!other.Equals(value)) yield return (other, $"{other}");
                break;
            case Gate gate:
                yield return (gate with { Element = gate.Element ^ 1 }, "another element");
                yield return (gate with { Position = gate.Position + 1 }, "another position");
                break;
            case ImmutableArray<int> numbers:
                yield return (numbers.Add(1), "one more");
                break;
            case ImmutableArray<Signal> signals:
                yield return (signals.Add(new Signal(1, 1)), "one more");
                for (var i = 0; i < signals.Length; i++)
                {
                    yield return (signals.SetItem(i, signals[i] with { Node = signals[i].Node + 1 }), "another node");
                    yield return (signals.SetItem(i, signals[i] with { Factor = signals[i].Factor + 1 }), "another factor");
                }

                break;
        }
    }
}
