using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Globalization;
using System.IO.Hashing;
using System.Security.Cryptography;
using System.Text;
using Circuits.Judging.Changes;
using Circuits.Model;

namespace Circuits.Judging;

/// <summary>
/// What a gear of an assembly does, as far as it tells assemblies apart: each clutch's state, verdict, level and metering, foreign
/// oil, and what the driver feels. Where parts and lines of the file are not in it.
/// </summary>
public sealed class GearBehaviour
{
    /// <summary>Levels that round to the same tenth of line pressure are alike.</summary>
    private const double LevelClasses = 10;

    /// <summary>Line pressures that round to the same multiple of this, kPa, are alike.</summary>
    private const double LineClass = 50;

    /// <summary>Openings that round to the same hundredth of a square millimetre meter alike.</summary>
    private const double AreaClasses = 100;

    private GearBehaviour(GearReport gear)
    {
        Verdict = gear.Verdict;
        Feel = gear.Drive?.Feel;
        CrossFeeds = gear.CrossFeeds.Length;
        DependsOnHistory = gear.DependsOnHistory;
        Fingerprint = Fingerprints.Of(Describe(gear));
    }

    /// <summary>The gear's verdict.</summary>
    public Verdict Verdict { get; }

    /// <summary>What the driver feels; null when the file gives no gear train.</summary>
    public Feel? Feel { get; }

    /// <summary>How many ways foreign oil comes in.</summary>
    public int CrossFeeds { get; }

    /// <summary>Whether another start leads to another state.</summary>
    public bool DependsOnHistory { get; }

    /// <summary>The same number for gears that behave alike, whatever the machine.</summary>
    public UInt128 Fingerprint { get; }

    /// <summary>The behaviour of a gear.</summary>
    /// <param name="gear">What was found out about it.</param>
    public static GearBehaviour Of(GearReport gear) => new(gear);

    private static string Describe(GearReport gear)
    {
        var text = new StringBuilder(256);
        text.Append(CultureInfo.InvariantCulture, $"{(int)gear.Verdict} {gear.Settled} {gear.DependsOnHistory} {Class(gear.LineKilopascals / LineClass)}");
        foreach (var clutch in gear.Clutches)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{clutch.Clutch}\t{(int)clutch.State} {(int)clutch.Strength} {(int)clutch.Verdict} ");
            text.Append(CultureInfo.InvariantCulture, $"{Class(clutch.Level * LevelClasses)} {AreaOf(clutch.Apply)} {AreaOf(clutch.Release)}");
        }

        foreach (var feed in gear.CrossFeeds.Select(feed => $"\n{feed.From}>{feed.Into}").Distinct().Order(StringComparer.Ordinal)) text.Append(feed);
        if (gear.Drive is { } drive)
            text.Append(CultureInfo.InvariantCulture, $"\n{drive.Mobility} {(drive.Ratio is { } ratio ? Class(ratio * 1000) : long.MinValue)} {drive.Feel.Gear} {drive.Feel.Key}");
        return text.ToString();
    }

    private static long AreaOf(Control? control) => control is null ? -1 : Class(control.SquareMillimetres * AreaClasses);

    private static long Class(double value) => (long)Math.Round(value);
}

/// <summary>What an assembly does in every gear, and on the way between them.</summary>
public sealed class AssemblyBehaviour
{
    private AssemblyBehaviour(ImmutableArray<GearBehaviour> gears, ImmutableArray<ChangeBehaviour>? changes)
    {
        (Gears, Changes) = (gears, changes);
        Span<byte> bytes = stackalloc byte[16 * (gears.Length + (changes is null ? 0 : 1))];
        for (var i = 0; i < gears.Length; i++)
        {
            BinaryPrimitives.WriteUInt128BigEndian(bytes[(16 * i)..], gears[i].Fingerprint);
            if (gears[i].Verdict > Verdict) Verdict = gears[i].Verdict;
        }

        if (changes is { } timed) BinaryPrimitives.WriteUInt128BigEndian(bytes[^16..], Fingerprints.Of(string.Join('\n', timed.Select(change => $"{change.Change}\t{change.Condition}\t{(int)change.Verdict}"))));
        Fingerprint = Fingerprints.Of(bytes);
    }

    /// <summary>The gears, in the order of the file.</summary>
    public ImmutableArray<GearBehaviour> Gears { get; }

    /// <summary>The worst gear's verdict.</summary>
    public Verdict Verdict { get; }

    /// <summary>The changes of gear that are not good; null where they were not timed.</summary>
    public ImmutableArray<ChangeBehaviour>? Changes { get; }

    /// <summary>The worst change's verdict; null where none was timed.</summary>
    public ShiftVerdict? WorstChange => Changes?.Select(change => change.Verdict).DefaultIfEmpty(ShiftVerdict.Good).Max();

    /// <summary>The same number for assemblies that behave alike in every gear, whatever the machine.</summary>
    public UInt128 Fingerprint { get; }

    /// <summary>The behaviour that those gears and changes make.</summary>
    /// <param name="gears">The gears, in the order of the file.</param>
    /// <param name="changes">The changes of gear that are not good; null where they were not timed.</param>
    public static AssemblyBehaviour Of(ImmutableArray<GearBehaviour> gears, ImmutableArray<ChangeBehaviour>? changes) => new(gears, changes);
}

/// <summary>Numbers that stand for what was hashed: 128 bits of SHA-256, so that two things never share one by chance.</summary>
internal static class Fingerprints
{
    public static UInt128 Of(string text) => Of(Encoding.UTF8.GetBytes(text));

    public static UInt128 Of(ReadOnlySpan<byte> bytes)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(bytes, hash);
        return BinaryPrimitives.ReadUInt128BigEndian(hash);
    }

    /// <summary>A number for keys that live as long as the process and that nobody chooses: made in a fraction of the time.</summary>
    public static UInt128 Key(ReadOnlySpan<byte> bytes) => XxHash128.HashToUInt128(bytes);
}
