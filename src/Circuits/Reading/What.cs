namespace Circuits.Reading;

/// <summary>What a value belongs to, as messages name it: <c>ball body.two-way: seats</c>. Put together only when a message needs it.</summary>
/// <param name="Element">The element: <c>ball body.two-way</c>.</param>
/// <param name="Key">The key within it, or null.</param>
internal readonly record struct What(string Element, string? Key = null) : Findings.INamed
{
    /// <inheritdoc/>
    public string InWords => ToString();

    public override string ToString() => Key is null ? Element : Element.Length == 0 ? Key : $"{Element}: {Key}";
}
