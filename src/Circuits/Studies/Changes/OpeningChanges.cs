using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Studies.Changes;

/// <summary>Openings of a sheet are closed at a location; one that spans several is closed whole.</summary>
/// <param name="Part">The sheet.</param>
/// <param name="Locations">The location, or those that the opening spans.</param>
/// <param name="WasOpen">Whether there was an opening.</param>
/// <param name="Place">Where the file describes it.</param>
public sealed record PlugOpening(string Part, ImmutableArray<string> Locations, bool WasOpen, Place Place)
    : Change(Part, $"{Part}@{string.Join('-', Locations)}", Place)
{
    /// <inheritdoc/>
    public override Phrase Text => WasOpen ? Phrase.Of($"plug {Element}") : Phrase.Of($"plug {Element} (metal already)");

    internal override string Item => $"opening {Element}";

    internal override string FunctionIn(Assembly assembly) => Functions.OfOpening(assembly, Part, [.. Locations]);

    internal override ImmutableArray<string> Claims => OpeningClaims.Of(Part, Locations);

    internal override Revision Rewrite(Revision revision)
    {
        if (!WasOpen) return revision;
        return revision with
        {
            Openings = revision.Openings.RemoveAll(opening => opening.At.Any(at => Locations.Contains(at.Name))),
            OpenExcept = revision.OpenElsewhere
                ? [.. revision.OpenExcept, .. Locations.Where(at => revision.OpenExcept.All(except => except.Name != at)).Select(at => new NameUse(at, Place))]
                : revision.OpenExcept,
        };
    }
}

/// <summary>A location of a sheet has one round hole of a given size, whatever it had before.</summary>
/// <param name="Part">The sheet.</param>
/// <param name="Location">The location.</param>
/// <param name="Hole">The hole.</param>
/// <param name="Was">The opening before: null for metal; for a gasket's window, and for several openings, unsized.</param>
/// <param name="Place">Where the file describes it.</param>
public sealed record SetHole(string Part, string Location, Shape.Hole Hole, Shape? Was, Place Place) : Change(Part, $"{Part}@{Location}", Place)
{
    private double? Before => Was?.Area?.EquivalentDiameter;

    /// <summary>Whether the hole is as it was.</summary>
    public bool IsSame => Before is { } before && Math.Abs(before - Hole.Diameter.Millimetres) < 1e-9;

    /// <inheritdoc/>
    public override bool CanBeUndone => IsSame || Before > Hole.Diameter.Millimetres;

    /// <inheritdoc/>
    public override Phrase Text => (Was, Before) switch
    {
        (null, _) => Phrase.Of($"drill a {Size} hole at {Element} (metal before)"),
        (_, null) => Phrase.Of($"make {Element} a {Size} hole"),
        _ when IsSame => Phrase.Of($"leave {Element} at {Size}"),
        _ when Before > Hole.Diameter.Millimetres => Phrase.Of($"sleeve {Element} down to {Size} (was {new Length(Before.Value)})"),
        _ => Phrase.Of($"drill {Element} to {Size} (was {new Length(Before.Value)})"),
    };

    /// <summary>The size as it was asked for; a drill's number with its diameter.</summary>
    private Phrase Size => Hole.Drill is { } drill ? Phrase.Of($"{drill} ({Hole.Diameter})") : Phrase.Of($"{Hole.Diameter}");

    internal override string Item => $"opening {Element}";

    internal override string FunctionIn(Assembly assembly) => Functions.OfOpening(assembly, Part, [Location]);

    internal override ImmutableArray<string> Claims => OpeningClaims.Of(Part, [Location]);

    internal override Revision Rewrite(Revision revision)
    {
        if (revision.Openings.FirstOrDefault(opening => opening.At.Any(at => at.Name == Location)) is { } there)
        {
            var kept = revision.Openings.RemoveAll(opening => !ReferenceEquals(opening, there) && opening.At.Any(at => at.Name == Location));
            return IsSame && kept.Length == revision.Openings.Length
                ? revision
                : revision with { Openings = kept.Replace(there, there with { Shape = Hole }) };
        }

        return revision with
        {
            Openings = revision.Openings.Add(new Opening([new NameUse(Location, Place)], Hole, false, Place)),
            OpenExcept = revision.OpenExcept.RemoveAll(except => except.Name == Location),
        };
    }
}

/// <summary>What changes of openings lay claim to: every location that they touch.</summary>
internal static class OpeningClaims
{
    public static ImmutableArray<string> Of(string part, IEnumerable<string> locations) => [.. locations.Select(at => $"location {part}@{at}")];
}
