using System.Collections.Immutable;
using System.Globalization;
using Circuits.Findings;
using Circuits.Model;

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
    public override string Text => WasOpen ? $"plug {Element}" : $"plug {Element} (metal already)";

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
    public override string Text => (Was, Before) switch
    {
        (null, _) => $"drill a {Size} hole at {Element} (metal before)",
        (_, null) => $"make {Element} a {Size} hole",
        _ when IsSame => $"leave {Element} at {Size}",
        _ when Before > Hole.Diameter.Millimetres => $"sleeve {Element} down to {Size} (was {Millimetres(Before.Value)})",
        _ => $"drill {Element} to {Size} (was {Millimetres(Before.Value)})",
    };

    /// <summary>The size as it was asked for; a drill's number with its diameter.</summary>
    private string Size => Hole.Text.StartsWith('#') ? $"{Hole.Text} ({Millimetres(Hole.Diameter.Millimetres)})" : Millimetres(Hole.Diameter.Millimetres);

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

    private static string Millimetres(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} mm");
}

/// <summary>What changes of openings lay claim to: every location that they touch.</summary>
internal static class OpeningClaims
{
    public static ImmutableArray<string> Of(string part, IEnumerable<string> locations) => [.. locations.Select(at => $"location {part}@{at}")];
}
