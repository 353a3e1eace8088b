namespace Circuits.Networks;

/// <summary>Arrays that are used again and again, for as many values as there are each time.</summary>
internal static class WorkArray
{
    /// <summary>So many values, whatever they are.</summary>
    public static Span<TValue> Of<TValue>(ref TValue[] array, int length)
    {
        if (array.Length < length) array = new TValue[Math.Max(length, 2 * array.Length)];
        return array.AsSpan(0, length);
    }

    /// <summary>So many values, all the same.</summary>
    public static Span<TValue> Filled<TValue>(ref TValue[] array, int length, TValue value)
    {
        var values = Of(ref array, length);
        values.Fill(value);
        return values;
    }
}
