using System.Collections;
using System.Collections.Immutable;

namespace Circuits;

/// <summary>A sequence gone through in place: whoever knows its type asks no interface for the next element. An empty collection expression makes an empty one.</summary>
/// <param name="steps">How it is gone through, from before its first element.</param>
internal readonly struct View<TSteps, TElement>(TSteps steps) : IEnumerable<TElement>
    where TSteps : struct, ISteps<TElement>
{
    /// <summary>What each element gives.</summary>
    public View<GivingOn<TSteps, TElement, TResult>, TResult> Select<TResult>(Func<TElement, TResult> give) => new(new(steps, give));

    /// <summary>The elements that are of a type; none that is null.</summary>
    public View<OfTypeSteps<TSteps, TElement, TWanted>, TWanted> OfType<TWanted>() => new(new(steps));

    /// <summary>The elements, each once, where it comes first.</summary>
    public List<TElement> Distinct() => ToList().Distinct();

    /// <summary>A list of the elements.</summary>
    public List<TElement> ToList() => [.. this];

    /// <summary>An array of the elements that stays as it is.</summary>
    public ImmutableArray<TElement> ToImmutableArray() => [.. this];

    /// <summary>Goes through the elements.</summary>
    public TSteps GetEnumerator() => steps;

    IEnumerator<TElement> IEnumerable<TElement>.GetEnumerator()
    {
        foreach (var element in this) yield return element;
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<TElement>)this).GetEnumerator();
}

/// <summary>A view that knows how many elements it has, so that what it is spread into is made in the right size.</summary>
/// <param name="steps">How it is gone through, from before its first element.</param>
internal readonly struct CountedView<TSteps, TElement>(TSteps steps) : IReadOnlyCollection<TElement>
    where TSteps : struct, ICountedSteps<TElement>
{
    /// <inheritdoc/>
    public int Count => steps.Count;

    /// <inheritdoc cref="View{TSteps, TElement}.OfType{TWanted}"/>
    public View<OfTypeSteps<TSteps, TElement, TWanted>, TWanted> OfType<TWanted>() => new(new(steps));

    /// <inheritdoc cref="View{TSteps, TElement}.Distinct"/>
    public List<TElement> Distinct() => ToList().Distinct();

    /// <inheritdoc cref="View{TSteps, TElement}.ToList"/>
    public List<TElement> ToList() => [.. this];

    /// <summary>An array of the elements.</summary>
    public TElement[] ToArray() => [.. this];

    /// <inheritdoc cref="View{TSteps, TElement}.ToImmutableArray"/>
    public ImmutableArray<TElement> ToImmutableArray() => [.. this];

    /// <inheritdoc cref="View{TSteps, TElement}.GetEnumerator"/>
    public TSteps GetEnumerator() => steps;

    IEnumerator<TElement> IEnumerable<TElement>.GetEnumerator()
    {
        foreach (var element in this) yield return element;
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<TElement>)this).GetEnumerator();
}
