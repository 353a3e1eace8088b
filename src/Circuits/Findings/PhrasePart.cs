using Circuits.Quantities;

namespace Circuits.Findings;

/// <summary>What a piece of a phrase is.</summary>
internal enum PhraseKind : byte
{
    /// <summary>Wording.</summary>
    Wording,

    /// <summary>A name.</summary>
    Name,

    /// <summary>A count.</summary>
    Count,

    /// <summary>A quantity.</summary>
    Quantity,

    /// <summary>A quantity without its unit.</summary>
    BareQuantity,

    /// <summary>A gear.</summary>
    Gear,

    /// <summary>A place.</summary>
    Place,

    /// <summary>A fact with words of its own.</summary>
    Worded,

    /// <summary>A phrase; only until the one around it is finished.</summary>
    Phrase,
}

/// <summary>A piece of a phrase.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Value">The words, the name, the gear, the place, the fact.</param>
/// <param name="Number">The quantity in base units, the count, or how a gear is mentioned.</param>
/// <param name="Dimension">What a quantity measures.</param>
internal readonly record struct PhrasePart(PhraseKind Kind, object? Value, double Number = 0, Dimension Dimension = default)
{
    public static PhrasePart Of(PhraseKind kind, object value) => new(kind, value);

    public static PhrasePart Of(Quantity quantity, bool bare) =>
        new(bare ? PhraseKind.BareQuantity : PhraseKind.Quantity, null, quantity.Value, quantity.Dimension);

    /// <summary>What it is about, for whoever tells one message from another by more than its rule.</summary>
    public IEnumerable<string> About => Kind switch
    {
        PhraseKind.Name => [(string)Value!],
        PhraseKind.Worded => ((IWorded)Value!).About,
        PhraseKind.Quantity or PhraseKind.BareQuantity when !IsComputed =>
            [string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Quantity.Steps * Quantity.Step:0.####} {Dimension}")],
        _ => [],
    };

    /// <summary>Sizes stand in the file, or follow from it by arithmetic; all else comes out of a solver.</summary>
    private bool IsComputed => Dimension is not (Dimension.Length or Dimension.Area);

    private Quantity Quantity => new(Dimension, Number);

    public bool Equals(PhrasePart other, PhraseAside aside)
    {
        if (Kind != other.Kind) return false;
        switch (Kind)
        {
            case PhraseKind.Quantity or PhraseKind.BareQuantity:
                return Dimension == other.Dimension && ((aside == PhraseAside.Computed && IsComputed) || Quantity.LooksLike(other.Quantity));
            case PhraseKind.Gear when aside == PhraseAside.Gear:
                return Number.Equals(other.Number);
            default:
                return Number.Equals(other.Number) && Equals(Value, other.Value);
        }
    }

    public int CompareTo(PhrasePart other) =>
        Kind != other.Kind ? Kind.CompareTo(other.Kind)
        : Value is string text && other.Value is string with ? string.CompareOrdinal(text, with)
        : Number.CompareTo(other.Number);

    public void AddTo(ref HashCode hash)
    {
        hash.Add(Kind);
        if (Kind is PhraseKind.Wording or PhraseKind.Name or PhraseKind.Worded) hash.Add(Value);
    }

    public void Tell(IPhraseWriter writer)
    {
        switch (Kind)
        {
            case PhraseKind.Wording:
                writer.Wording((string)Value!);
                break;
            case PhraseKind.Name:
                writer.Name((string)Value!);
                break;
            case PhraseKind.Count:
                writer.Count((int)Number);
                break;
            case PhraseKind.Quantity or PhraseKind.BareQuantity:
                writer.Quantity(Quantity, Kind == PhraseKind.BareQuantity);
                break;
            case PhraseKind.Gear:
                writer.Gear(new GearMention((string)Value!, (GearForm)(int)Number));
                break;
            case PhraseKind.Place:
                writer.Place((Place)Value!);
                break;
            case PhraseKind.Worded:
                writer.Worded((IWorded)Value!);
                break;
        }
    }
}
