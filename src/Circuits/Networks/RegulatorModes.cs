namespace Circuits.Networks;

/// <summary>What a regulator, a relief or a pressure solenoid does.</summary>
public static class RegulatorModes
{
    /// <summary>Its outlet is joined to its supply; a relief is closed.</summary>
    public const int Feeding = 0;

    /// <summary>It holds its outlet at the set pressure.</summary>
    public const int Holding = 1;

    /// <summary>Its outlet is joined to its drain.</summary>
    public const int Relieving = 2;
}
