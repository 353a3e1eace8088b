namespace Circuits.Model;

/// <summary>Where a spool has stuck.</summary>
public enum StuckAt
{
    /// <summary>At rest, whatever moves it.</summary>
    Rest,

    /// <summary>Moved, whatever holds it.</summary>
    Moved,

    /// <summary>Midway, with laps so short that every port of both positions is open a little.</summary>
    Midway,

    /// <summary>Midway, with laps so long that no port is open.</summary>
    MidwayShut,
}

/// <summary>How a regulator has stuck.</summary>
public enum RegulatorStuck
{
    /// <summary>Fully open: a reducing one to its supply, one that holds a passage to where it spills.</summary>
    Open,

    /// <summary>Shut: oil passes no port of it.</summary>
    Shut,

    /// <summary>A reducing one whose outlet is open to its drain.</summary>
    Drained,
}

/// <summary>What is wrong with a solenoid.</summary>
public enum SolenoidFault
{
    /// <summary>Its outlet is drained, whatever it is told.</summary>
    StuckLow,

    /// <summary>Its outlet has its whole feed, whatever it is told.</summary>
    StuckHigh,

    /// <summary>It gets no current, and gives what it gives at rest.</summary>
    Dead,

    /// <summary>A solenoid of the other polarity stands in its place: it gives at rest what it should give energized.</summary>
    Reversed,
}
