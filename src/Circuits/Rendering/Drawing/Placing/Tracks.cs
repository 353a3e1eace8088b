namespace Circuits.Rendering.Drawing.Placing;

/// <summary>
/// Gives every line that changes height between two layers an upright track of its own there, ordered so that lines which need
/// not cross do not, and never lie on one another.
/// </summary>
internal static class Tracks
{
    private const double Near = 5;

    /// <summary>Sets the tracks of the pieces between two layers.</summary>
    /// <returns>How many tracks there are.</returns>
    public static int Assign(List<Piece> pieces)
    {
        var bent = pieces.Where(piece => Math.Abs(piece.FromY - piece.ToY) >= 0.5).ToList();
        if (bent.Count == 0) return 0;
        var after = new List<int>[bent.Count];
        var open = new int[bent.Count];
        for (var i = 0; i < bent.Count; i++) after[i] = [];
        for (var i = 0; i < bent.Count; i++)
        {
            for (var k = 0; k < bent.Count; k++)
            {
                if (i == k || !IsBefore(bent[i], bent[k])) continue;
                after[i].Add(k);
                open[k]++;
            }
        }

        var least = new int[bent.Count];
        var done = new bool[bent.Count];
        var tracks = new List<List<Piece>>();
        for (var count = 0; count < bent.Count; count++)
        {
            // Where lines need one another's place in a circle, the one with the fewest before it goes first.
            var next = -1;
            for (var i = 0; i < bent.Count; i++)
            {
                if (!done[i] && (next < 0 || open[i] < open[next])) next = i;
            }

            done[next] = true;
            var track = least[next];
            while (track < tracks.Count && tracks[track].Exists(other => Overlap(other, bent[next]))) track++;
            while (tracks.Count <= track) tracks.Add([]);
            tracks[track].Add(bent[next]);
            bent[next].Track = track;
            foreach (var k in after[next])
            {
                open[k]--;
                least[k] = Math.Max(least[k], track + 1);
            }
        }

        return tracks.Count;
    }

    private static double Top(Piece piece) => Math.Min(piece.FromY, piece.ToY);

    private static double Bottom(Piece piece) => Math.Max(piece.FromY, piece.ToY);

    private static bool Overlap(Piece a, Piece b) => Top(a) < Bottom(b) + Near && Top(b) < Bottom(a) + Near;

    /// <summary>Whether the first must bend further left than the second.</summary>
    private static bool IsBefore(Piece a, Piece b)
    {
        // Its left end is level with the other's right end: the two would lie on one another.
        if (Math.Abs(a.FromY - b.ToY) < Near) return true;
        if (Math.Abs(b.FromY - a.ToY) < Near || !Overlap(a, b)) return false;
        var (aDown, bDown) = (a.ToY > a.FromY, b.ToY > b.FromY);
        if (aDown != bDown) return false;
        return aDown ? a.FromY > b.FromY && a.ToY > b.ToY : a.FromY < b.FromY && a.ToY < b.ToY;
    }
}
