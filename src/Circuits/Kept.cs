using System.Collections;
using System.Collections.Immutable;

namespace Circuits;

/// <summary>The elements of an array or list that pass.</summary>
internal readonly struct Kept<TSource>(Row<TSource> source, Func<TSource, bool> pass) : IEnumerable<TSource>
{
    /// <summary>What each of them gives.</summary>
    public KeptMapped<TSource, TResult> Select<TResult>(Func<TSource, TResult> give) => new(this, give);

    /// <summary>Goes through them.</summary>
    public Enumerator GetEnumerator() => new(source, pass);

    /// <summary>A list of them.</summary>
    public List<TSource> ToList() => [.. this];

    /// <summary>An array of them that stays as it is.</summary>
    public ImmutableArray<TSource> ToImmutableArray() => [.. this];

    IEnumerator<TSource> IEnumerable<TSource>.GetEnumerator()
    {
        foreach (var element in this) yield return element;
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<TSource>)this).GetEnumerator();

    /// <summary>Goes through them in place.</summary>
    internal struct Enumerator(Row<TSource> source, Func<TSource, bool> pass)
    {
        private int at = -1;

        /// <summary>The one that it has come to.</summary>
        public readonly TSource Current => source[at];

        /// <summary>Goes on to the next.</summary>
        public bool MoveNext()
        {
            while (++at < source.Count)
            {
                if (pass(source[at])) return true;
            }

            return false;
        }
    }
}

/// <summary>What each element of an array or list that passes gives.</summary>
internal readonly struct KeptMapped<TSource, TResult>(Kept<TSource> source, Func<TSource, TResult> give) : IEnumerable<TResult>
{
    /// <summary>Them, each once, where it comes first.</summary>
    public List<TResult> Distinct() => ToList().Distinct();

    /// <summary>Goes through them.</summary>
    public Enumerator GetEnumerator() => new(source.GetEnumerator(), give);

    /// <summary>A list of them.</summary>
    public List<TResult> ToList() => [.. this];

    /// <summary>An array of them that stays as it is.</summary>
    public ImmutableArray<TResult> ToImmutableArray() => [.. this];

    IEnumerator<TResult> IEnumerable<TResult>.GetEnumerator()
    {
        foreach (var element in this) yield return element;
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<TResult>)this).GetEnumerator();

    /// <summary>Goes through them in place.</summary>
    internal struct Enumerator(Kept<TSource>.Enumerator source, Func<TSource, TResult> give)
    {
        private Kept<TSource>.Enumerator source = source;

        /// <summary>The one that it has come to.</summary>
        public readonly TResult Current => give(source.Current);

        /// <summary>Goes on to the next.</summary>
        public bool MoveNext() => source.MoveNext();
    }
}
