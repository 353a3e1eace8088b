using System.Globalization;
using System.Text;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Tests.Outside;

/// <summary>
/// What <c>reach.lp</c> takes over from the library for one assembly in one gear: where things stand, and pressures that whole
/// numbers cannot give. Read from the public report alone.
/// </summary>
internal static class ClingoClaims
{
    /// <summary>The facts that make an assembly.</summary>
    public static void Choose(StringBuilder text, int number, Assembly assembly)
    {
        text.Append(CultureInfo.InvariantCulture, $"assembly({number}).");
        if (assembly.Matched is not null) text.Append(CultureInfo.InvariantCulture, $"matched({number}).");
        foreach (var (part, revision) in assembly.Unit.Parts.Zip(assembly.Revisions))
            text.Append(CultureInfo.InvariantCulture, $"chosen({number},{ClingoFacts.Q(part.Name)},{ClingoFacts.Id(part, revision)}).");
        text.AppendLine();
    }

    /// <summary>The facts of one gear of it.</summary>
    public static void Claim(StringBuilder text, int state, int number, Assembly assembly, GearReport gear)
    {
        text.Append(CultureInfo.InvariantCulture, $"state({state},{number},{ClingoFacts.Q(gear.Gear)}).");
        foreach (var position in gear.Positions)
        {
            switch (position.Kind)
            {
                case PositionKind.Valve:
                    text.Append(CultureInfo.InvariantCulture, $"at({state},valve({ClingoFacts.Q(position.Element)},{(position.Position is Stand.Spool { Moved: true } or Stand.Spool { Stuck: StuckAt.Moved } ? "moved" : "rest")})).");
                    break;
                case PositionKind.Ball when position.Position is Stand.OnSeat seat:
                    text.Append(CultureInfo.InvariantCulture, $"shut({state},{ClingoFacts.Q(position.Element)},{SeatNumber(assembly, position, seat.Seat)}).");
                    break;
                case PositionKind.Regulator or PositionKind.Solenoid when ModeOf(position.Position) is { } mode:
                    text.Append(CultureInfo.InvariantCulture, $"mode({state},{ClingoFacts.Q(position.Element)},{mode}).");
                    if (position.Position is Stand.Holds holds)
                        text.Append(CultureInfo.InvariantCulture, $"told({state},{ClingoFacts.Q(position.Element)},{holds.Set.Kilopascals:0}).");
                    break;
            }
        }

        foreach (var passage in gear.Pressures)
            text.Append(CultureInfo.InvariantCulture, $"claim({state},{ClingoFacts.Q(passage.Passage)},{ClingoFacts.Pascals(passage.Kilopascals)}).");
        text.AppendLine();
    }

    private static string? ModeOf(Stand position) => position switch
    {
        Stand.Simple { Kind: StandKind.Drains } => "relieving",
        Stand.Simple { Kind: StandKind.Closed or StandKind.OpenToSupply } => "feeding",
        Stand.Holds => "holding",
        _ => null,
    };

    /// <summary>Which of its seats, as the file numbers them, a ball closes.</summary>
    private static int SeatNumber(Assembly assembly, PositionReport position, string element)
    {
        foreach (var (part, revision) in assembly.Unit.Parts.Zip(assembly.Revisions))
        {
            var ball = revision.Balls.FirstOrDefault(candidate => $"{part.Name}.{candidate.Name}" == position.Element);
            if (ball is null) continue;
            for (var i = 0; i < ball.Seats.Length; i++)
            {
                var names = ball.Seats[i] switch
                {
                    Seat.AtLocation at => element.Split('@')[^1].Split('-').Contains(at.Location),
                    Seat.InCasting inside => element == ClingoFacts.SeatElement(part, ball, inside),
                    _ => false,
                };
                if (names) return i;
            }
        }

        throw new InvalidOperationException($"{position.Element} {element}: no such seat");
    }
}
