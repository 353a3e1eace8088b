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

    /// <summary>The converter is not locked, so the engine turns faster than it should.</summary>
    NoLockUp,

    /// <summary>The converter stays locked: the engine is dragged down at a stop.</summary>
    StaysLocked,

    /// <summary>A place that needs oil gets too little: nothing is felt until something seizes.</summary>
    Starved,

    /// <summary>A place gets more pressure than it may have: it may burst.</summary>
    OverPressure,

    /// <summary>Line pressure is low: soft, late, slips under load.</summary>
    Soft,

    /// <summary>Line pressure is high: everything is harder.</summary>
    Hard,

    /// <summary>How the gear comes in hangs on a size that the file does not give.</summary>
    Undecided,

    /// <summary>A clutch comes on too fast.</summary>
    Harsh,

    /// <summary>A clutch comes on too slowly.</summary>
    Delayed,

    /// <summary>On the way into the gear the engine runs up.</summary>
    Flares,

    /// <summary>On the way into the gear clutches work against each other.</summary>
    TiesUpOnTheWay,

    /// <summary>The gear does not come to hold, though it would once it did.</summary>
    NeverComes,

    /// <summary>A clutch lets go too fast.</summary>
    LetsGoFast,

    /// <summary>A clutch lets go too slowly.</summary>
    LetsGoSlowly,
}
