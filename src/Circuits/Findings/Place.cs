namespace Circuits.Findings;

/// <summary>Where in a circuit file a thing stands.</summary>
/// <param name="File">The file's path as the user gave it, or as the unit file refers to it.</param>
/// <param name="Line">The line, counted from 1; 0 when the whole file is meant.</param>
/// <param name="Column">The column, counted from 1; 0 when the whole line is meant.</param>
public readonly record struct Place(string File, int Line, int Column) : IComparable<Place>
{
    /// <summary>A place for things that stand in no file.</summary>
    public static Place None { get; } = new("", 0, 0);

    /// <inheritdoc/>
    public int CompareTo(Place other)
    {
        var byFile = string.CompareOrdinal(File, other.File);
        if (byFile != 0) return byFile;
        var byLine = Line.CompareTo(other.Line);
        return byLine != 0 ? byLine : Column.CompareTo(other.Column);
    }

    /// <summary>The place as <c>file:line:column</c>.</summary>
    public override string ToString() => Line == 0 ? File : Column == 0 ? $"{File}:{Line}" : $"{File}:{Line}:{Column}";

    /// <summary>Orders by file, line and column.</summary>
    public static bool operator <(Place left, Place right) => left.CompareTo(right) < 0;

    /// <summary>Orders by file, line and column.</summary>
    public static bool operator >(Place left, Place right) => left.CompareTo(right) > 0;

    /// <summary>Orders by file, line and column.</summary>
    public static bool operator <=(Place left, Place right) => left.CompareTo(right) <= 0;

    /// <summary>Orders by file, line and column.</summary>
    public static bool operator >=(Place left, Place right) => left.CompareTo(right) >= 0;
}
