using System.Collections.Immutable;

namespace Circuits;

/// <summary>How a view is gone through. A copy goes its own way.</summary>
internal interface ISteps<out TElement>
{
    /// <summary>The element that it has come to.</summary>
    TElement Current { get; }

    /// <summary>Goes on to the next; false when there is none.</summary>
    bool MoveNext();
}

/// <summary>Steps whose number is known before they are gone.</summary>
internal interface ICountedSteps<out TElement> : ISteps<TElement>
{
    /// <summary>How many there are in all.</summary>
    int Count { get; }
}

/// <summary>To what each element of an array or list gives.</summary>
internal struct Giving<TSource, TResult>(Row<TSource> source, Func<TSource, TResult> give) : ICountedSteps<TResult>
{
    private int at = -1;

    /// <inheritdoc/>
    public readonly int Count => source.Count;

    /// <inheritdoc/>
    public readonly TResult Current => give(source[at]);

    /// <inheritdoc/>
    public bool MoveNext() => ++at < source.Count;
}

/// <summary>To what each element of an array or list and its number give.</summary>
internal struct GivingByNumber<TSource, TResult>(Row<TSource> source, Func<TSource, int, TResult> give) : ICountedSteps<TResult>
{
    private int at = -1;

    /// <inheritdoc/>
    public readonly int Count => source.Count;

    /// <inheritdoc/>
    public readonly TResult Current => give(source[at], at);

    /// <inheritdoc/>
    public bool MoveNext() => ++at < source.Count;
}

/// <summary>To the elements of an array or list that pass.</summary>
internal struct Passing<TSource>(Row<TSource> source, Func<TSource, bool> pass) : ISteps<TSource>
{
    private int at = -1;

    /// <inheritdoc/>
    public readonly TSource Current => source[at];

    /// <inheritdoc/>
    public bool MoveNext()
    {
        while (++at < source.Count)
        {
            if (pass(source[at])) return true;
        }

        return false;
    }
}

/// <summary>To the elements of the arrays that each element of an array or list gives.</summary>
internal struct GivingSeveral<TSource, TResult>(Row<TSource> source, Func<TSource, ImmutableArray<TResult>> give) : ISteps<TResult>
{
    private Row<TResult> several;
    private int from = -1;
    private int at;

    /// <inheritdoc/>
    public readonly TResult Current => several[at];

    /// <inheritdoc/>
    public bool MoveNext()
    {
        at++;
        while (at >= several.Count)
        {
            if (++from >= source.Count) return false;
            several = new(give(source[from]));
            at = 0;
        }

        return true;
    }
}

/// <summary>To what each element of a view gives.</summary>
internal struct GivingOn<TSteps, TSource, TResult>(TSteps steps, Func<TSource, TResult> give) : ISteps<TResult>
    where TSteps : struct, ISteps<TSource>
{
    private TSteps steps = steps;

    /// <inheritdoc/>
    public readonly TResult Current => give(steps.Current);

    /// <inheritdoc/>
    public bool MoveNext() => steps.MoveNext();
}

/// <summary>To the elements of a view that are of a type; none that is null.</summary>
internal struct OfTypeSteps<TSteps, TSource, TWanted>(TSteps steps) : ISteps<TWanted>
    where TSteps : struct, ISteps<TSource>
{
    private TSteps steps = steps;

    /// <inheritdoc/>
    public TWanted Current { get; private set; } = default!;

    /// <inheritdoc/>
    public bool MoveNext()
    {
        while (steps.MoveNext())
        {
            if (steps.Current is not TWanted wanted) continue;
            Current = wanted;
            return true;
        }

        return false;
    }
}
