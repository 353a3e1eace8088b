using System.Buffers;
using System.Buffers.Binary;
using System.Security.Cryptography;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>A number for everything that the solver sees of a network; two networks that share it have the same answers.</summary>
internal static class PlanFingerprint
{
    public static UInt128 Of(Plan plan)
    {
        var text = new ArrayBufferWriter<byte>(4096);
        Add(text, plan.Cells);
        Add(text, plan.Pump);
        Add(text, plan.UnregulatedPressure);
        foreach (var link in plan.Links)
        {
            Add(text, link.A);
            Add(text, link.B);
            Add(text, link.Area);
            Add(text, (int)link.Gate.Kind);
            Add(text, link.Gate.Element);
            Add(text, link.Gate.Position);
        }

        foreach (var spool in plan.Spools)
        {
            Add(text, spool.Springs);
            Add(text, spool.MovedBy);
            Add(text, spool.HeldBy);
        }

        foreach (var ball in plan.Balls)
        {
            Add(text, ball.Pocket);
            Add(text, ball.Seats.Length);
            foreach (var seat in ball.Seats)
            {
                Add(text, seat.Link);
                Add(text, seat.Beyond);
            }
        }

        foreach (var regulator in plan.Regulators)
        {
            Add(text, (int)regulator.Kind);
            Add(text, regulator.From);
            Add(text, regulator.Out);
            Add(text, regulator.To);
            Add(text, regulator.Spring);
            Add(text, regulator.Area);
            Add(text, regulator.SetBy);
        }

        foreach (var volume in plan.Compliance) Add(text, volume);
        foreach (var meeting in plan.IsMeeting) Add(text, meeting ? 1 : 0);
        AddGears(text, plan.Network);
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(text.WrittenSpan, hash);
        return BinaryPrimitives.ReadUInt128BigEndian(hash);
    }

    /// <summary>What each gear sets, in the numbers of the network.</summary>
    private static void AddGears(ArrayBufferWriter<byte> text, Network network)
    {
        foreach (var gear in network.Assembly.Unit.Gears)
        {
            var inputs = GearInputs.Of(network, gear);
            Add(text, inputs.Lever);
            foreach (var fed in inputs.Fed) Add(text, fed ? 1 : 0);
            foreach (var set in inputs.Set) Add(text, set);
            foreach (var (node, kilopascals) in inputs.Fixed)
            {
                Add(text, node);
                Add(text, kilopascals);
            }
        }
    }

    private static void Add(ArrayBufferWriter<byte> text, Signal[] signals)
    {
        Add(text, signals.Length);
        foreach (var signal in signals)
        {
            Add(text, signal.Node);
            Add(text, signal.Factor);
        }
    }

    private static void Add(ArrayBufferWriter<byte> text, int value)
    {
        BinaryPrimitives.WriteInt32LittleEndian(text.GetSpan(sizeof(int)), value);
        text.Advance(sizeof(int));
    }

    private static void Add(ArrayBufferWriter<byte> text, double value)
    {
        BinaryPrimitives.WriteDoubleLittleEndian(text.GetSpan(sizeof(double)), value);
        text.Advance(sizeof(double));
    }
}
