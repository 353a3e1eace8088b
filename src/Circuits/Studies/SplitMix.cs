namespace Circuits.Studies;

/// <summary>Draws that are the same on every machine.</summary>
internal static class SplitMix
{
    /// <summary>One step of SplitMix64. Source: G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014.</summary>
    public static ulong Mixed(ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        state = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
        state = (state ^ (state >> 27)) * 0x94D049BB133111EB;
        return state ^ (state >> 31);
    }
}
