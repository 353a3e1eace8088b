using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads when a clutch counts as applied or weak, and when a shift is no longer good.</summary>
internal static class ThresholdReader
{
    /// <summary>The thresholds; what the file leaves out has its default.</summary>
    public static Thresholds Read(YamlNode node, Place place, FindingList findings)
    {
        var standard = Thresholds.Default;
        if (Fields.Open(node, "thresholds", place, findings) is not { } fields) return standard;
        var shifts = standard.Shifts;
        var read = new Thresholds(
            fields.Fraction("applied", GearRanges.Share) ?? standard.Applied, fields.Fraction("weak", GearRanges.Share) ?? standard.Weak, fields.Fraction("floor", GearRanges.Share) ?? standard.Floor)
        {
            LineOff = fields.Fraction("line", GearRanges.Share) ?? standard.LineOff,
            Shifts = new ShiftLimits(
                Time("flare", shifts.Flare), Time("rise", shifts.Rise), Time("tie-up", shifts.TieUp), fields.Duration("harsh", GearRanges.Limit)?.Milliseconds, Time("delayed", shifts.Delayed)),
        };
        fields.Close();
        if (read.Weak >= read.Applied)
            findings.Add(SizeRules.SizeOutOfRange.At(fields.PlaceOf("weak"), $"thresholds: weak must be less than applied", "Correct one of them."));
        return read;

        double Time(string key, double otherwise) => fields.Duration(key, GearRanges.Limit)?.Milliseconds ?? otherwise;
    }
}
