using Circuits.Quantities;

namespace Circuits.Findings;

/// <summary>
/// Something to tell a person, as data: pieces of wording, and between them what they speak of, with its type: quantities, names,
/// gears, places, counts. Words are made of it once, at the end, by the renderer and in the units asked for; nothing else can get at them.
/// </summary>
/// <remarks>
/// Written as an interpolated string, <c>Phrase.Of($"{clutch} has {pressure}")</c>. A bare number with a fraction is no argument: give it as a
/// quantity. Two phrases are equal when they say the same with quantities that look the same in SI units.
/// </remarks>
public sealed class Phrase : IEquatable<Phrase>
{
    private readonly PhrasePart[] parts;

    internal Phrase(PhrasePart[] parts) => this.parts = parts;

    /// <summary>Nothing.</summary>
    public static Phrase Empty { get; } = new([]);

    /// <summary>Whether it says nothing.</summary>
    public bool IsEmpty => parts.Length == 0;

    /// <summary>The names and sizes that it is about, in order: what stays the same while computed quantities move.</summary>
    public IEnumerable<string> About => parts.SelectMany(part => part.About);

    /// <summary>The phrase that an interpolated string writes.</summary>
    /// <param name="text">The interpolated string.</param>
    public static Phrase Of(PhraseBuilder text) => text.ToPhrase();

    /// <summary>Phrases one after the other.</summary>
    /// <param name="between">What stands between two of them.</param>
    /// <param name="phrases">The phrases.</param>
    public static Phrase Join(string between, IEnumerable<Phrase> phrases)
    {
        var all = new List<PhrasePart>();
        foreach (var phrase in phrases)
        {
            if (all.Count > 0) all.Add(PhrasePart.Of(PhraseKind.Wording, between));
            all.AddRange(phrase.parts);
        }

        return new Phrase([.. all]);
    }

    /// <summary>Names one after the other, a comma between them.</summary>
    /// <param name="names">The names.</param>
    public static Phrase List(IEnumerable<string> names) => Join(", ", names.Select(name => new Phrase([PhrasePart.Of(PhraseKind.Name, name)])));

    /// <summary>Whether another says the same, some of it set aside.</summary>
    /// <param name="other">The other.</param>
    /// <param name="aside">What may differ.</param>
    public bool Equals(Phrase? other, PhraseAside aside)
    {
        if (ReferenceEquals(this, other)) return true;
        if (other is null || parts.Length != other.parts.Length) return false;
        for (var i = 0; i < parts.Length; i++)
        {
            if (!parts[i].Equals(other.parts[i], aside)) return false;
        }

        return true;
    }

    /// <summary>The same with every name rewritten: a name of the file may hold what no line of text can.</summary>
    /// <param name="rewrite">Gives the name to tell.</param>
    internal Phrase WithNames(Func<string, string> rewrite) =>
        new([.. parts.Select(part => part.Kind == PhraseKind.Name ? PhrasePart.Of(PhraseKind.Name, rewrite((string)part.Value!)) : part)]);

    /// <summary>An order that does not hang on the order in which things were found: piece by piece.</summary>
    internal static IComparer<Phrase> InOrder { get; } = Comparer<Phrase>.Create((one, other) => one.CompareTo(other));

    private int CompareTo(Phrase other)
    {
        for (var i = 0; i < Math.Min(parts.Length, other.parts.Length); i++)
        {
            if (parts[i].CompareTo(other.parts[i]) is var order and not 0) return order;
        }

        return parts.Length.CompareTo(other.parts.Length);
    }

    /// <inheritdoc/>
    public bool Equals(Phrase? other) => Equals(other, PhraseAside.Nothing);

    /// <summary>Whether two say the same.</summary>
    public static bool operator ==(Phrase? left, Phrase? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two do not say the same.</summary>
    public static bool operator !=(Phrase? left, Phrase? right) => !(left == right);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Phrase other && Equals(other);

    /// <summary>The same for phrases that are equal, whatever is set aside.</summary>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var part in parts) part.AddTo(ref hash);
        return hash.ToHashCode();
    }

    /// <summary>Tells the renderer piece by piece.</summary>
    internal void Tell(IPhraseWriter writer)
    {
        foreach (var part in parts) part.Tell(writer);
    }
}

/// <summary>What may differ between two phrases that count as the same.</summary>
public enum PhraseAside
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>The gear that they were found in, which a heading or a field tells.</summary>
    Gear,

    /// <summary>Quantities that were computed; sizes, which the file gives, count.</summary>
    Computed,
}

/// <summary>Something with a name that messages call it by.</summary>
public interface INamed
{
    /// <summary>The name as messages write it.</summary>
    string InWords { get; }
}

/// <summary>A fact for which the renderer has words of its own: what is felt, where a valve stands.</summary>
public interface IWorded
{
    /// <summary>Kinds and names that it is about, without computed quantities.</summary>
    IEnumerable<string> About { get; }
}

/// <summary>The gear that something was found in, where it stands in the sentence. It is left out where a heading names it.</summary>
/// <param name="Gear">The gear.</param>
/// <param name="Form">How the sentence mentions it.</param>
public readonly record struct GearMention(string Gear, GearForm Form)
{
    /// <summary>As <c> in R</c>, with the blank before it.</summary>
    /// <param name="gear">The gear.</param>
    public static GearMention In(string gear) => new(gear, GearForm.In);

    /// <summary>As <c>, in R</c> at the end of a sentence.</summary>
    /// <param name="gear">The gear.</param>
    public static GearMention AtEnd(string gear) => new(gear, GearForm.AtEnd);

    /// <summary>As <c>R: </c> at the start of a sentence.</summary>
    /// <param name="gear">The gear.</param>
    public static GearMention Before(string gear) => new(gear, GearForm.Before);

    /// <summary>As <c>R </c>, the sentence's subject.</summary>
    /// <param name="gear">The gear.</param>
    public static GearMention Subject(string gear) => new(gear, GearForm.Subject);
}

/// <summary>How a sentence mentions its gear.</summary>
public enum GearForm
{
    /// <summary>As <c> in R</c>.</summary>
    In,

    /// <summary>As <c>, in R</c>.</summary>
    AtEnd,

    /// <summary>As <c>R: </c>.</summary>
    Before,

    /// <summary>As <c>R </c>.</summary>
    Subject,
}

/// <summary>Takes a phrase piece by piece; the renderer alone is one.</summary>
internal interface IPhraseWriter
{
    /// <summary>A piece of wording.</summary>
    void Wording(string text);

    /// <summary>A name, or words of the file.</summary>
    void Name(string name);

    /// <summary>A count.</summary>
    void Count(int count);

    /// <summary>A quantity.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="bare">Whether its unit follows with the next quantity: <c>285 of 600 kPa</c>.</param>
    void Quantity(Quantity quantity, bool bare);

    /// <summary>The gear that it was found in.</summary>
    void Gear(GearMention gear);

    /// <summary>A place in a file.</summary>
    void Place(Place place);

    /// <summary>A fact for which there are words.</summary>
    void Worded(IWorded fact);
}
