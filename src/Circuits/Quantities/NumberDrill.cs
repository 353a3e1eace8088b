namespace Circuits.Quantities;

/// <summary>Number drills, #1 (largest) to #80, of ASME B94.11M.</summary>
public static class NumberDrill
{
    /// <summary>The largest drill's number.</summary>
    public const int First = 1;

    /// <summary>The smallest drill's number.</summary>
    public const int Last = 80;

    // Ten-thousandths of an inch, from #1 on.
    private static ReadOnlySpan<short> Table =>
    [
        2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935,
        1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660, 1610,
        1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285,
        1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995, 980,
        960, 935, 890, 860, 820, 810, 785, 760, 730, 700,
        670, 635, 595, 550, 520, 465, 430, 420, 410, 400,
        390, 380, 370, 360, 350, 330, 320, 310, 292, 280,
        260, 250, 240, 225, 210, 200, 180, 160, 145, 135,
    ];

    /// <summary>The drill's diameter, or null when there is no such drill.</summary>
    /// <param name="number">The drill's number.</param>
    public static Length? Diameter(int number) =>
        number is < First or > Last ? null : new Length(Table[number - First] * 25.4 / 10000);

    /// <summary>The drill whose diameter is closest; the larger of two equally close ones.</summary>
    /// <param name="diameter">The diameter wanted.</param>
    public static int Nearest(Length diameter)
    {
        var best = First;
        for (var number = First + 1; number <= Last; number++)
        {
            if (Distance(number) < Distance(best)) best = number;
        }

        return best;

        double Distance(int number) => Math.Abs(Diameter(number)!.Value.Millimetres - diameter.Millimetres);
    }

    /// <summary>Whether a diameter is a drill's to within what a file's digits can lose.</summary>
    /// <param name="diameter">The diameter.</param>
    public static bool IsOne(Length diameter) => Math.Abs(Diameter(Nearest(diameter))!.Value.Millimetres - diameter.Millimetres) < 1e-6;

    /// <summary>The largest drill that is not larger than a diameter, or null.</summary>
    /// <param name="diameter">The diameter.</param>
    public static int? Below(Length diameter)
    {
        for (var number = First; number <= Last; number++)
        {
            if (Diameter(number)!.Value.Millimetres <= diameter.Millimetres) return number;
        }

        return null;
    }

    /// <summary>The smallest drill that is not smaller than a diameter, or null.</summary>
    /// <param name="diameter">The diameter.</param>
    public static int? Above(Length diameter)
    {
        for (var number = Last; number >= First; number--)
        {
            if (Diameter(number)!.Value.Millimetres >= diameter.Millimetres) return number;
        }

        return null;
    }
}
