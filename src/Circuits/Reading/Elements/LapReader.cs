using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Reads how a spool's lands lap its ports: <c>overlap</c> or <c>underlap</c>.</summary>
internal static class LapReader
{
    /// <summary>The overlap, less than nothing for an underlap; null where neither is given, or with a finding.</summary>
    /// <param name="fields">The spool's keys; its <c>travel</c> among them.</param>
    /// <param name="share">It must be less than this share of the travel.</param>
    public static Length? Read(Fields fields, double share)
    {
        var (over, under) = (fields.Length("overlap", SpoolRanges.Lap), fields.Length("underlap", SpoolRanges.Lap));
        var key = fields.Has("overlap") ? "overlap" : "underlap";
        if (fields.Has("overlap") && fields.Has("underlap"))
        {
            fields.Findings.Add(NameRules.NamedTwice.At(
                fields.PlaceOf("underlap"), $"{fields.Element} has both overlap and underlap", "Keep the one that is measured."));
            return null;
        }

        if ((over ?? under) is not { } lap) return null;
        if (!fields.Has("travel"))
        {
            fields.Findings.Add(ShapeRules.MissingKey.At(
                fields.PlaceOf(key), $"{fields.Element} has {key} but no travel", "Add travel: 6 mm, the way from one end to the other."));
            return null;
        }

        if (fields.Length("travel", SpoolRanges.Travel) is not { } travel) return null;
        if (lap.Millimetres < share * travel.Millimetres) return over ?? new Length(-lap.Millimetres);
        fields.Findings.Add(SizeRules.SizeOutOfRange.At(
            fields.Find(key)!.Place,
            $"{fields.What(key)} must be less than {new Length(share * travel.Millimetres)} for a travel of {travel}",
            "With more the ports would never open fully, or never shut."));
        return null;
    }
}
