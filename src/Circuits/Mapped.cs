using System.Collections;
using System.Collections.Immutable;

namespace Circuits;

/// <summary>What each element of an array or list gives.</summary>
internal readonly struct Mapped<TSource, TResult>(Row<TSource> source, Func<TSource, TResult> give) : IReadOnlyCollection<TResult>
{
    /// <inheritdoc/>
    public int Count => source.Count;

    /// <summary>Those that are of a type; none that is null.</summary>
    public MappedOf<TSource, TResult, TWanted> OfType<TWanted>() => new(this);

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
    internal struct Enumerator(Row<TSource> source, Func<TSource, TResult> give)
    {
        private int at = -1;

        /// <summary>The one that it has come to.</summary>
        public readonly TResult Current => give(source[at]);

        /// <summary>Goes on to the next.</summary>
        public bool MoveNext() => ++at < source.Count;
    }
}

/// <summary>What each element of an array or list gives, where that is of a type.</summary>
internal readonly struct MappedOf<TSource, TResult, TWanted>(Mapped<TSource, TResult> source) : IEnumerable<TWanted>
{
    /// <summary>Goes through them.</summary>
    public Enumerator GetEnumerator() => new(source.GetEnumerator());

    /// <summary>A list of them.</summary>
    public List<TWanted> ToList() => [.. this];

    /// <summary>An array of them that stays as it is.</summary>
    public ImmutableArray<TWanted> ToImmutableArray() => [.. this];

    IEnumerator<TWanted> IEnumerable<TWanted>.GetEnumerator()
    {
        foreach (var element in this) yield return element;
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<TWanted>)this).GetEnumerator();

    /// <summary>Goes through them in place.</summary>
    internal struct Enumerator(Mapped<TSource, TResult>.Enumerator source)
    {
        private Mapped<TSource, TResult>.Enumerator source = source;

        /// <summary>The one that it has come to.</summary>
        public TWanted Current { get; private set; } = default!;

        /// <summary>Goes on to the next.</summary>
        public bool MoveNext()
        {
            while (source.MoveNext())
            {
                if (source.Current is not TWanted wanted) continue;
                Current = wanted;
                return true;
            }

            return false;
        }
    }
}

/// <summary>What each element of an array or list and its number give.</summary>
internal readonly struct Numbered<TSource, TResult>(Row<TSource> source, Func<TSource, int, TResult> give) : IReadOnlyCollection<TResult>
{
    /// <inheritdoc/>
    public int Count => source.Count;

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
    internal struct Enumerator(Row<TSource> source, Func<TSource, int, TResult> give)
    {
        private int at = -1;

        /// <summary>The one that it has come to.</summary>
        public readonly TResult Current => give(source[at], at);

        /// <summary>Goes on to the next.</summary>
        public bool MoveNext() => ++at < source.Count;
    }
}
