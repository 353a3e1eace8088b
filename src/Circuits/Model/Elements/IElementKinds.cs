namespace Circuits.Model;

/// <summary>
/// One method for each kind of element that a part's revision can contribute, by the name that the kind has in <see cref="Revision"/>. Whatever
/// treats elements implements it and says of every kind what becomes of it, if only that nothing does: a kind that is forgotten does not compile.
/// </summary>
/// <typeparam name="TSource">What elements are looked up in: a revision, an assembly, a network.</typeparam>
public interface IElementKinds<in TSource>
{
    /// <summary>Treats passages.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Passages(TSource source);

    /// <summary>Treats openings.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Openings(TSource source);

    /// <summary>Treats balls.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Balls(TSource source);

    /// <summary>Treats two-position spools.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Valves(TSource source);

    /// <summary>Treats regulators.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Regulators(TSource source);

    /// <summary>Treats solenoids.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Solenoids(TSource source);

    /// <summary>Treats positions of the manual valve.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Lever(TSource source);

    /// <summary>Treats restrictions.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Restrictions(TSource source);

    /// <summary>Treats leaks.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Leaks(TSource source);

    /// <summary>Treats screens and filters.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Screens(TSource source);

    /// <summary>Treats accumulators.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Accumulators(TSource source);

    /// <summary>Treats clutches.</summary>
    /// <param name="source">Where they are looked up.</param>
    void Clutches(TSource source);
}

/// <summary>Goes through the kinds of element.</summary>
public static class ElementKinds
{
    /// <summary>Treats every kind, in the order of <see cref="Revision"/>.</summary>
    /// <param name="kinds">What treats them.</param>
    /// <param name="source">Where elements are looked up.</param>
    public static void Each<TSource>(this IElementKinds<TSource> kinds, TSource source)
    {
        kinds.Passages(source);
        kinds.Openings(source);
        kinds.Balls(source);
        kinds.Valves(source);
        kinds.Regulators(source);
        kinds.Solenoids(source);
        kinds.Lever(source);
        kinds.Restrictions(source);
        kinds.Leaks(source);
        kinds.Screens(source);
        kinds.Accumulators(source);
        kinds.Clutches(source);
    }
}
