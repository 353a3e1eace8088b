using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Model;

/// <summary>What a part is. Only castings and sheets lie in joints.</summary>
public enum PartKind
{
    /// <summary>A casting: valve body half, channel plate, case.</summary>
    Casting,

    /// <summary>A sheet: separator plate, gasket.</summary>
    Sheet,

    /// <summary>A set of check balls.</summary>
    BallSet,

    /// <summary>A solenoid pack.</summary>
    SolenoidPack,

    /// <summary>A clutch drum or housing.</summary>
    Drum,

    /// <summary>Anything else that contributes elements.</summary>
    Other,
}

/// <summary>A replaceable component.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Revisions">Its design levels, in the order of the file; at least one.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Part(string Name, PartKind Kind, ImmutableArray<Revision> Revisions, Place Place)
{
    /// <summary>The revision of that name, or null.</summary>
    /// <param name="name">The revision's name.</param>
    public Revision? FindRevision(string name) => Revisions.FirstOrDefault(revision => revision.Name == name);
}

/// <summary>One design level of a part, with everything it inherits from the level it is based on. What it has of each kind of element stands in that kind's file.</summary>
/// <param name="Name">Its name; <c>1</c> when the part leaves <c>revisions</c> out.</param>
/// <param name="Place">Where it is written.</param>
public sealed partial record Revision(string Name, Place Place)
{
    /// <summary>The revision it is based on, or null.</summary>
    public string? BasedOn { get; init; }

    /// <summary>What a person can see that tells this revision apart.</summary>
    public ImmutableArray<NameUse> Marks { get; init; } = [];
}

/// <summary>Where two castings face each other.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Upper">The first casting named.</param>
/// <param name="Lower">The second casting named.</param>
/// <param name="Sheets">The sheets between them, from the first casting to the second.</param>
/// <param name="Locations">Locations with coordinates, where the file gives them.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Joint(
    string Name, NameUse Upper, NameUse Lower, ImmutableArray<NameUse> Sheets, ImmutableArray<Location> Locations, Place Place);

/// <summary>A location's coordinates on its joint.</summary>
/// <param name="Id">The location's number.</param>
/// <param name="X">Millimetres to the right.</param>
/// <param name="Y">Millimetres up.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Location(string Id, double? X, double? Y, Place Place);
