using Circuits.Findings;

namespace Circuits.Driveline;

/// <summary>A gear train that is locked before any clutch holds.</summary>
public static class GearsetCannotTurn
{
    /// <summary>The rule.</summary>
    public static Rule Rule { get; } = new(
        "gearset-cannot-turn", Severity.Error,
        "With no clutch holding, the gear train as written still stops the input, or stops the output while the input "
        + "turns. Members joined to each other or to the case, a one-way clutch that faces the wrong way, or teeth that "
        + "cannot mesh leave no motion. Whatever clutch holds then, it cannot get better: each one takes motion away.",
        "No real unit is built like this, so the description is wrong. Every gear would be reported as a tie-up, and "
        + "nothing could be said about what the driver feels.",
        "planetaries: {front: {sun: 34, ring: 74}}\n"
        + "joined: [[front.sun, case], [front.ring, case]]   # two members of one planetary held for ever: the carrier too\n"
        + "input: front.sun\n"
        + "output: front.carrier",
        "Look at the place named. A brake that only some gears apply belongs under `clutches`, not under `joined`. "
        + "A one-way clutch [a, b] keeps `a` from turning backwards against `b`: swap the two if it faces the wrong way. "
        + "Check the teeth: a ring has more than its sun.");
}
