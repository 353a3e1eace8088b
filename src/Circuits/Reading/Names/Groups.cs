namespace Circuits.Reading;

/// <summary>What stands under each of several names, in the order in which it was added.</summary>
internal sealed class Groups<TItem>
{
    private readonly OrderedDictionary<string, List<TItem>> byName = new(StringComparer.Ordinal);

    /// <summary>The names, in the order in which they came first.</summary>
    public IEnumerable<string> Names => byName.Keys;

    /// <summary>What stands under a name; empty when nothing does.</summary>
    public List<TItem> this[string name] => byName.TryGetValue(name, out var items) ? items : [];

    /// <summary>Whether anything stands under a name.</summary>
    public bool Has(string name) => byName.ContainsKey(name);

    /// <summary>Puts one more under a name.</summary>
    public void Add(string name, TItem item)
    {
        if (byName.TryGetValue(name, out var items)) items.Add(item);
        else byName.Add(name, [item]);
    }
}
