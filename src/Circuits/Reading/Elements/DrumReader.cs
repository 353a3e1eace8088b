using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Reads the drum that a clutch's piston turns with.</summary>
internal static class DrumReader
{
    private const string Help = "Write drum: {turns: input, oil: 20 mm, inner: 40 mm, outer: 65 mm}, with your radii.";

    /// <summary>The drum, or null, with findings when something is wrong with it. Whether its member exists is for <see cref="GearSetReader"/> to say.</summary>
    public static Drum? Read(Fields clutch)
    {
        if (clutch.Find("drum") is not { } node) return null;
        if (Fields.Open(node, $"{clutch.Element}: drum", clutch.PlaceOf("drum"), clutch.Findings) is not { } fields) return null;
        var turns = fields.NeedText("turns", "input");
        var oil = fields.Length("oil", ClutchRanges.DrumRadius).Needed(fields, "oil");
        var inner = fields.Length("inner", ClutchRanges.DrumRadius).Needed(fields, "inner");
        var outer = fields.Length("outer", ClutchRanges.DrumRadius).Needed(fields, "outer");
        fields.Close();
        if (turns is null || oil is not { } level || inner is not { } from || outer is not { } to) return null;
        if (level.Millimetres <= from.Millimetres && from.Millimetres < to.Millimetres)
            return new Drum(new Member(turns.Text, turns.Place), level, from, to, fields.Place);
        clutch.Findings.Add(SizeRules.SizeOutOfRange.At(
            fields.Place, $"{fields.Element}: radii must rise from oil over inner to outer", Help));
        return null;
    }
}
