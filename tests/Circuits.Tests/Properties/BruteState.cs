namespace Circuits.Tests.Properties;

/// <summary>Where everything that moves stands. Regulator modes: 0 joined to its supply (a relief: closed), 1 holding, 2 joined to its drain.</summary>
internal sealed record BruteState(bool[] Moved, int[] Balls, int[] Modes)
{
    public bool IsOpen(BruteLink link) => link.Gate switch
    {
        BruteGate.Spool => Moved[link.Element] == (link.Position == 1),
        BruteGate.Ball => Balls[link.Element] != link.Position,
        BruteGate.Regulator => Modes[link.Element] == link.Position,
        _ => true,
    };

    public override string ToString() =>
        $"spools {string.Concat(Moved.Select(moved => moved ? '1' : '0'))} balls {string.Join(',', Balls)} modes {string.Concat(Modes)}";
}
