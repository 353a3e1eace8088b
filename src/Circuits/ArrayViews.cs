using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Circuits;

/// <summary>
/// <c>Select</c>, <c>Where</c>, <c>SelectMany</c> and <c>Distinct</c> of arrays and lists, which code in this namespace gets instead of LINQ's: the
/// same words and the same elements in the same order. Going through a view, or spreading one into a collection, asks no interface and makes no
/// object; the compiled program has to find out at every start who answers an interface, once for each place and each kind of element.
/// Whatever else LINQ knows goes on from a view as from any sequence.
/// </summary>
internal static class ArrayViews
{
    /// <summary>What each element gives.</summary>
    public static CountedView<Giving<TSource, TResult>, TResult> Select<TSource, TResult>(this ImmutableArray<TSource> source, Func<TSource, TResult> give) =>
        new(new(new(source), give));

    /// <inheritdoc cref="Select{TSource, TResult}(ImmutableArray{TSource}, Func{TSource, TResult})"/>
    public static CountedView<Giving<TSource, TResult>, TResult> Select<TSource, TResult>(this TSource[] source, Func<TSource, TResult> give) =>
        new(new(new(source), give));

    /// <inheritdoc cref="Select{TSource, TResult}(ImmutableArray{TSource}, Func{TSource, TResult})"/>
    public static CountedView<Giving<TSource, TResult>, TResult> Select<TSource, TResult>(this List<TSource> source, Func<TSource, TResult> give) =>
        new(new(new(source), give));

    /// <summary>What each element and its number give.</summary>
    public static CountedView<GivingByNumber<TSource, TResult>, TResult> Select<TSource, TResult>(
        this ImmutableArray<TSource> source, Func<TSource, int, TResult> give) => new(new(new(source), give));

    /// <inheritdoc cref="Select{TSource, TResult}(ImmutableArray{TSource}, Func{TSource, int, TResult})"/>
    public static CountedView<GivingByNumber<TSource, TResult>, TResult> Select<TSource, TResult>(
        this List<TSource> source, Func<TSource, int, TResult> give) => new(new(new(source), give));

    /// <summary>The elements that pass.</summary>
    public static View<Passing<TSource>, TSource> Where<TSource>(this ImmutableArray<TSource> source, Func<TSource, bool> pass) => new(new(new(source), pass));

    /// <inheritdoc cref="Where{TSource}(ImmutableArray{TSource}, Func{TSource, bool})"/>
    public static View<Passing<TSource>, TSource> Where<TSource>(this TSource[] source, Func<TSource, bool> pass) => new(new(new(source), pass));

    /// <inheritdoc cref="Where{TSource}(ImmutableArray{TSource}, Func{TSource, bool})"/>
    public static View<Passing<TSource>, TSource> Where<TSource>(this List<TSource> source, Func<TSource, bool> pass) => new(new(new(source), pass));

    /// <summary>The elements of the arrays that each element gives, one array after the other.</summary>
    public static View<GivingSeveral<TSource, TResult>, TResult> SelectMany<TSource, TResult>(
        this ImmutableArray<TSource> source, Func<TSource, ImmutableArray<TResult>> give) => new(new(new(source), give));

    /// <inheritdoc cref="SelectMany{TSource, TResult}(ImmutableArray{TSource}, Func{TSource, ImmutableArray{TResult}})"/>
    public static View<GivingSeveral<TSource, TResult>, TResult> SelectMany<TSource, TResult>(
        this List<TSource> source, Func<TSource, ImmutableArray<TResult>> give) => new(new(new(source), give));

    /// <summary>The elements, each once, where it comes first.</summary>
    public static List<TSource> Distinct<TSource>(this List<TSource> source)
    {
        var met = new HashSet<TSource>(source.Count);
        var first = new List<TSource>(source.Count);
        for (var i = 0; i < source.Count; i++)
        {
            if (met.Add(source[i])) first.Add(source[i]);
        }

        return first;
    }
}

/// <summary>An array or a list, or neither, which has no elements. What is added to a list while a view of it is gone through is gone through as well.</summary>
internal readonly struct Row<TElement>
{
    private readonly TElement[]? array;
    private readonly List<TElement>? list;

    /// <summary>An array.</summary>
    public Row(TElement[] array) => this.array = array;

    /// <summary>An array that stays as it is.</summary>
    public Row(ImmutableArray<TElement> array) => this.array = ImmutableCollectionsMarshal.AsArray(array) ?? throw new ArgumentNullException(nameof(array));

    /// <summary>A list.</summary>
    public Row(List<TElement> list) => this.list = list;

    /// <summary>How many elements there are.</summary>
    public int Count => array is not null ? array.Length : list is null ? 0 : list.Count;

    /// <summary>One of them.</summary>
    public TElement this[int at] => array is null ? list![at] : array[at];
}
