using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>The rules that reading a circuit file can find broken.</summary>
public static class ReadingRules
{
    /// <summary>Every rule of reading, by name.</summary>
    public static ImmutableArray<Rule> All { get; } =
    [
        .. new[]
        {
            FileRules.UnreadableFile, FileRules.FileTooBig, FileRules.EmptyFile, FileRules.BinaryFile, FileRules.NotUtf8,
            FileRules.NotYaml, FileRules.TabIndentation, FileRules.TooDeep, FileRules.TooManyAliases, FileRules.TooManyFaults,
            FileRules.UnsupportedYaml, FileRules.UnquotedDrill, FileRules.PartFileOutside, FileRules.PartFileAlone, FileRules.UnsupportedFormat,
            ShapeRules.UnknownKey, ShapeRules.MissingKey, ShapeRules.DuplicateKey, ShapeRules.WrongType,
            ShapeRules.EmptyValue, ShapeRules.UnknownWord, ShapeRules.MisplacedKey,
            SizeRules.NotASize, SizeRules.NumberWithoutUnit, SizeRules.UnknownUnit, SizeRules.WrongDimension,
            SizeRules.SizeOutOfRange, SizeRules.UnlikelySize, SizeRules.UnknownDrill, SizeRules.TableOrder,
            NameRules.UnknownName, NameRules.AmbiguousName, NameRules.BadName, NameRules.NamedTwice, NameRules.ExhaustMisplaced,
            PartRules.BasedOnCircle, PartRules.NothingToRemove, PartRules.UnusedLocation, PartRules.UnknownLocation,
            PartRules.LocationTakenTwice, PartRules.SeatOutsidePocket, PartRules.NotInJoint, PartRules.WrongPartKind,
            PartRules.SheetWithoutJoint, PartRules.SheetInTwoJoints, PartRules.HoleReachesNext,
            GearRules.IncompleteMatchedSet, GearRules.GearWithoutLever, GearRules.GearOrderCircle,
            GearRules.GearsetStructure, GearRules.CurrentWithoutTable, ChangeSetRules.IncompleteChange,
        }.OrderBy(rule => rule.Name, StringComparer.Ordinal),
    ];
}
