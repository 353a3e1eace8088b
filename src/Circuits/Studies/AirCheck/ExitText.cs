using Circuits.Networks;

namespace Circuits.Studies.AirCheck;

/// <summary>Says where air comes out.</summary>
internal static class ExitText
{
    /// <summary>Where a link lets air out: <c>case.direct at the face</c>, <c>clutch direct</c>, <c>body.drive by body.lever</c>.</summary>
    /// <param name="network">The network.</param>
    /// <param name="link">A link that ends in the open.</param>
    /// <param name="onFace">Whether it is a passage that opens on a face.</param>
    public static string Of(Network network, Link link, bool onFace)
    {
        var node = network.Nodes[link.Other(0)];
        if (onFace) return $"{node.Name} at the face";
        if (link.Kind == LinkKind.Leak && ClutchAt(network, node.Index) is { } clutch) return $"clutch {clutch}";
        return link.Kind switch
        {
            LinkKind.Leak => $"{node.Name} (a leak)",
            LinkKind.Restriction => $"{node.Name} by its outlet",
            LinkKind.LeverPort => node.Kind == NodeKind.Opening ? "the manual valve" : $"{node.Name} by the manual valve",
            LinkKind.Opening or LinkKind.Seat or LinkKind.ValvePort or LinkKind.SolenoidPort or LinkKind.RegulatorPort or LinkKind.Screen or LinkKind.Bypass or LinkKind.Chamber or LinkKind.Metal =>
                node.Kind == NodeKind.Opening ? link.Element : $"{node.Name} by {link.Element}",
        };
    }

    private static string? ClutchAt(Network network, int node)
    {
        foreach (var clutch in network.Clutches)
        {
            if (clutch.ReleaseChamber == node) return $"{clutch.Clutch.Name}, release side";
            if (network.Links.Any(link => link.Kind == LinkKind.Chamber && link.Other(clutch.Chamber) == node && (link.A == clutch.Chamber || link.B == clutch.Chamber))) return clutch.Clutch.Name;
        }

        return null;
    }
}
