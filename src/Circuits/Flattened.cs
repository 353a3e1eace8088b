using System.Collections;
using System.Collections.Immutable;

namespace Circuits;

/// <summary>The elements of the arrays that each element of an array or list gives.</summary>
internal readonly struct Flattened<TSource, TResult>(Row<TSource> source, Func<TSource, ImmutableArray<TResult>> give) : IEnumerable<TResult>
{
    /// <summary>Them, each once, where it comes first.</summary>
    public List<TResult> Distinct() => ToList().Distinct();

    /// <summary>Goes through them.</summary>
    public Enumerator GetEnumerator() => new(source, give);

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
    internal struct Enumerator(Row<TSource> source, Func<TSource, ImmutableArray<TResult>> give)
    {
        private int outer = -1;
        private int inner;
        private ImmutableArray<TResult> current = [];

        /// <summary>The one that it has come to.</summary>
        public readonly TResult Current => current[inner];

        /// <summary>Goes on to the next.</summary>
        public bool MoveNext()
        {
            inner++;
            while (inner >= current.Length)
            {
                if (++outer >= source.Count) return false;
                current = give(source[outer]);
                inner = 0;
            }

            return true;
        }
    }
}
