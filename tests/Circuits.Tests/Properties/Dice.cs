using CsCheck;

namespace Circuits.Tests.Properties;

/// <summary>Random choices in plain words.</summary>
internal sealed class Dice(PCG source)
{
    /// <summary>A number from 0 to one less than the count.</summary>
    public int Next(int count) => (int)source.Next((uint)count);

    /// <summary>A number from the least to the most, both included.</summary>
    public int Between(int least, int most) => least + Next(most - least + 1);

    public bool Chance(int percent) => Next(100) < percent;

    public T Pick<T>(IReadOnlyList<T> items) => items[Next(items.Count)];

    /// <summary>A real number with three digits after the point, so that a file holds it exactly.</summary>
    public double Real(double least, double most) => Math.Round(least + ((most - least) * Next(1_000_000) / 1e6), 3);

    public List<T> Shuffle<T>(IEnumerable<T> items)
    {
        var list = items.ToList();
        for (var i = list.Count - 1; i > 0; i--)
        {
            var j = Next(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }

        return list;
    }
}
