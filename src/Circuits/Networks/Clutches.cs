using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Stacking.Rules;

namespace Circuits.Networks;

/// <summary>A clutch with its chambers.</summary>
/// <param name="Clutch">The clutch, with what the chosen revisions change of it.</param>
/// <param name="Chamber">Its apply chamber's node; -1 when this assembly lacks the passage.</param>
/// <param name="ReleaseChamber">A servo's release chamber; -1 for none.</param>
/// <param name="ReleaseShare">Release area over apply area.</param>
/// <param name="Millilitres">What its apply chamber holds when it is filled; one millilitre where that is not given, so that alone it still keeps its pressure.</param>
public sealed record ClutchElement(Clutch Clutch, int Chamber, int ReleaseChamber, double ReleaseShare, double Millilitres)
{
    internal ClutchElement Renumbered(NewNumbers numbers)
    {
        var (clutch, chamber, releaseChamber, releaseShare, millilitres) = this;
        return new ClutchElement(clutch, numbers[chamber], numbers[releaseChamber], releaseShare, millilitres);
    }
}

public sealed partial class Network
{
    /// <summary>Clutches, in the order of the file.</summary>
    public required ImmutableArray<ClutchElement> Clutches { get; init; }
}

internal sealed partial class Draft
{
    public List<ClutchElement> Clutches { get; } = [];
}

internal sealed partial class ElementDrafter
{
    private void AddClutch(Clutch declared)
    {
        var clutch = declared.In(draft.Assembly);
        var chamber = -1;
        if (clutch.At is { } at && Resolve(at, $"clutch {clutch.Name}", "is fed from") is >= 0 and var passage)
        {
            chamber = draft.AddNode(NodeKind.Chamber, clutch.Name, draft.Nodes[passage].Circuit, clutch.Place);
            draft.Edges.Add(new Edge
            {
                Kind = LinkKind.Chamber,
                A = passage,
                B = chamber,
                Area = double.PositiveInfinity,
                Element = $"clutch {clutch.Name}",
                Part = at.Name.Part,
                Revision = "",
                Detail = Chamber,
                Place = clutch.Place,
            });
        }

        var release = clutch.ReleaseAt is { } releaseAt ? Resolve(releaseAt, $"clutch {clutch.Name}", "is released from") : -1;
        draft.Clutches.Add(new ClutchElement(clutch, chamber, release, ReleaseShare(clutch), clutch.Fill?.Millilitres ?? 1));
        CheckFill(clutch);
    }

    private void CheckFill(Clutch clutch)
    {
        if (clutch is not { Fill: { } fill, Swept: { } swept } || swept.Millilitres <= fill.Millilitres * (1 + Clutch.VolumeRounding)) return;
        draft.Findings.Add(FillContradicted.Rule.At(
            clutch.Place, $"clutch {clutch.Name} takes {fill} to fill, while its {clutch.Area!.Value} over {clutch.Stroke!.Value} sweep {swept}"));
    }

    private double ReleaseShare(Clutch clutch)
    {
        if (clutch.ReleaseAt is null) return 0;
        if (clutch.Area is { } area && clutch.ReleaseArea is { } releaseArea)
            return releaseArea.SquareMillimetres / area.SquareMillimetres;
        draft.Assume($"assumed equal apply and release areas for clutch {clutch.Name}: not both given", clutch.Place);
        return 1;
    }
}
