namespace Circuits.Findings;

/// <summary>Finds the known word that a misspelt one was meant to be.</summary>
public static class DidYouMean
{
    // More names than any file has; a search through a hostile file's would take long.
    private const int MostCandidates = 5000;
    private const int LongestWord = 64;

    /// <summary>
    /// The candidate closest to the word, or null when none is close: about one slip for every three letters, and at least one.
    /// Capitals count less than a slip. Of equally close candidates the first is taken.
    /// </summary>
    /// <param name="word">The word as written.</param>
    /// <param name="candidates">The words that would be right.</param>
    public static string? Find(string word, IEnumerable<string> candidates)
    {
        if (word.Length > LongestWord) return null;
        string? best = null;
        var lower = word.ToLowerInvariant();
        var least = Math.Max(1, (word.Length + 1) / 3) + 1;
        foreach (var candidate in candidates.Take(MostCandidates))
        {
            if (Math.Abs(candidate.Length - word.Length) >= least) continue;
            var distance = Distance(lower, candidate.ToLowerInvariant());
            if (distance >= least || distance >= candidate.Length) continue;
            least = distance;
            best = candidate;
            if (least == 0) break;
        }

        return best;
    }

    /// <summary>
    /// How many slips lie between two words: a letter added, left out, changed, or two neighbours swapped
    /// (Damerau-Levenshtein distance in its restricted form, no letter edited twice).
    /// </summary>
    /// <param name="left">One word.</param>
    /// <param name="right">The other.</param>
    public static int Distance(string left, string right)
    {
        // Three rows of the usual table are alive at a time.
        var before = new int[right.Length + 1];
        var above = new int[right.Length + 1];
        var row = new int[right.Length + 1];
        for (var j = 0; j <= right.Length; j++) above[j] = j;
        for (var i = 1; i <= left.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var same = left[i - 1] == right[j - 1];
                var best = Math.Min(Math.Min(above[j], row[j - 1]) + 1, above[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1])
                    best = Math.Min(best, before[j - 2] + 1);
                row[j] = best;
            }

            (before, above, row) = (above, row, before);
        }

        return above[right.Length];
    }
}
