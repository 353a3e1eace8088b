using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Stacking;

/// <summary>An opening of one sheet as it lies in a joint.</summary>
/// <param name="Sheet">The sheet's position in the joint, counted from the upper casting.</param>
/// <param name="Part">The sheet.</param>
/// <param name="Revision">Its revision.</param>
/// <param name="Locations">The locations that it spans.</param>
/// <param name="Shape">Its shape; null where the sheet is open without restricting (a gasket).</param>
/// <param name="SquareMillimetres">Its area; infinite where it does not restrict.</param>
/// <param name="Place">Where it is written.</param>
public sealed record StackedOpening(
    int Sheet, string Part, string Revision, ImmutableArray<string> Locations, Shape? Shape, double SquareMillimetres, Place Place)
{
    /// <summary>Its name in reports: <c>plate@22</c>, <c>plate@22-23</c>.</summary>
    public string Element { get; } = $"{Part}@{string.Join('-', Locations)}";
}

/// <summary>
/// One end of a contact: a passage, an opening by its number in <see cref="StackedJoint.Openings"/>, or, where openings of
/// several sheets lie on one another, the spot at which they meet, by its number in <see cref="StackedJoint.Meetings"/>.
/// </summary>
/// <param name="Passage">The passage, when both numbers are negative.</param>
/// <param name="Opening">The opening's number, or -1.</param>
/// <param name="Meeting">The meeting's number, or -1.</param>
public readonly record struct StackEnd(PassageName Passage, int Opening, int Meeting)
{
    /// <summary>A passage.</summary>
    /// <param name="passage">Its name.</param>
    public static StackEnd Of(PassageName passage) => new(passage, -1, -1);

    /// <summary>An opening.</summary>
    /// <param name="number">Its number.</param>
    public static StackEnd OfOpening(int number) => new(default, number, -1);

    /// <summary>A meeting.</summary>
    /// <param name="number">Its number.</param>
    public static StackEnd OfMeeting(int number) => new(default, -1, number);

    /// <summary>Whether it is a passage.</summary>
    public bool IsPassage => Opening < 0 && Meeting < 0;
}

/// <summary>Two things that oil passes between where they touch.</summary>
/// <param name="A">The end nearer the upper casting.</param>
/// <param name="B">The end nearer the lower casting.</param>
/// <param name="Location">The location at which they touch; the first when there are several.</param>
/// <param name="Via">Between two passages: the gasket's opening that lies between, by its number, or -1 for face to face.</param>
public readonly record struct StackContact(StackEnd A, StackEnd B, string Location, int Via);

/// <summary>Metal where, but for it, oil would pass.</summary>
/// <param name="A">A passage on one side.</param>
/// <param name="B">The passage that it would reach.</param>
/// <param name="Element">What is in the way: <c>plate@22</c>, <c>body@22</c>.</param>
/// <param name="Part">The part that it belongs to.</param>
/// <param name="Revision">That part's revision.</param>
/// <param name="Reason">Why no oil passes, in a few words.</param>
/// <param name="Place">The line to look at.</param>
public sealed record Blank(
    PassageName A, PassageName B, string Element, string Part, string Revision, Phrase Reason, Place Place);

/// <summary>One joint of an assembly, laid together: what touches what, and where metal is in the way.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Openings">The sheets' openings.</param>
/// <param name="Meetings">The location of each spot at which openings of several sheets meet.</param>
/// <param name="Contacts">What touches what.</param>
/// <param name="Blanks">Where metal is in the way.</param>
public sealed record StackedJoint(
    Joint Joint, ImmutableArray<StackedOpening> Openings, ImmutableArray<string> Meetings, ImmutableArray<StackContact> Contacts, ImmutableArray<Blank> Blanks);
