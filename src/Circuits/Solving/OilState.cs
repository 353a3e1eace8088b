namespace Circuits.Solving;

/// <summary>What a passage's oil is joined to.</summary>
public enum OilState
{
    /// <summary>Reached by a supply, no way to sump.</summary>
    Supply,

    /// <summary>Open to sump, no supply.</summary>
    Exhaust,

    /// <summary>Between supply and sump: its pressure is worked out from the openings.</summary>
    Between,

    /// <summary>Joined to neither; keeps its last pressure.</summary>
    Trapped,
}
