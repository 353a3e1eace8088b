using System.Globalization;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Properties;

/// <summary>
/// Runs a check over random values, the same ones each time. The environment variable <c>CIRCUITS_PROPERTY_RUNS</c>
/// multiplies the number of values, for a longer search: <c>CIRCUITS_PROPERTY_RUNS=20</c>.
/// </summary>
internal static class Property
{
    /// <summary>The constant that all random values come from.</summary>
    internal const ulong Seed = 0x5EED_0F_0117;

    /// <summary>Checks values one after the other; the first that fails is made as small as it can be while failing.</summary>
    /// <param name="gen">Makes the values.</param>
    /// <param name="count">How many, before the multiplier.</param>
    /// <param name="check">Gives a fault in words, or null when all is well.</param>
    /// <param name="shrink">Smaller neighbours of a value.</param>
    /// <param name="print">A value in words.</param>
    public static void ForAll<T>(Gen<T> gen, int count, Func<T, string?> check, Func<T, IEnumerable<T>> shrink, Func<T, string> print)
    {
        for (var i = 0; i < count * Runs(); i++)
        {
            var value = gen.Generate(new PCG(1, Seed + (ulong)i), null, out _);
            if (check(value) is not { } fault) continue;
            (value, fault) = Smallest(value, fault, check, shrink);
            Assert.Fail($"value {i}: {fault}\n{print(value)}");
        }
    }

    internal static (T, string) Smallest<T>(T value, string fault, Func<T, string?> check, Func<T, IEnumerable<T>> shrink)
    {
        for (var found = true; found;)
        {
            found = false;
            foreach (var smaller in shrink(value))
            {
                if (check(smaller) is not { } still || KindOf(still) != KindOf(fault)) continue;
                (value, fault, found) = (smaller, still, true);
                break;
            }
        }

        return (value, fault);
    }

    /// <summary>A fault's first words; a smaller value must fail in the same way.</summary>
    internal static string KindOf(string fault) => fault.Split(':')[0];

    private static int Runs() =>
        int.TryParse(Environment.GetEnvironmentVariable("CIRCUITS_PROPERTY_RUNS"), NumberStyles.None, CultureInfo.InvariantCulture, out var runs) ? runs : 1;
}
