namespace Circuits.Judging;

/// <summary>What the driver feels in a gear, or on the way into it.</summary>
public enum FeelKind
{
    /// <summary>Nothing out of the ordinary.</summary>
    AsItShould,

    /// <summary>No drive: the engine revs freely; on the way up from the gear before, it flares.</summary>
    NoDrive,

    /// <summary>A clutch slips.</summary>
    Slips,

    /// <summary>The gear train is locked.</summary>
    TieUp,

    /// <summary>It drives the other way.</summary>
    WrongDirection,

    /// <summary>It drives as another gear does.</summary>
    WrongGear,

    /// <summary>It drives in a ratio that no gear has.</summary>
    WrongRatio,

    /// <summary>It drives, and does not hold back on the overrun.</summary>
    NoEngineBraking,

    /// <summary>It drives as it should, with a clutch on that ought to be off.</summary>
    OneTooMany,

    /// <summary>A clutch that ought to be off is partly on.</summary>
    Drags,

    /// <summary>It moves forward where it should stand.</summary>
    CreepsForward,

    /// <summary>It moves backward where it should stand.</summary>
    CreepsBackward,

    /// <summary>It comes and goes.</summary>
    NeverSettles,

    /// <summary>A clutch comes on too fast.</summary>
    Harsh,

    /// <summary>A clutch comes on too slowly.</summary>
    Delayed,

    /// <summary>A clutch lets go too fast.</summary>
    LetsGoFast,

    /// <summary>A clutch lets go too slowly.</summary>
    LetsGoSlowly,
}
