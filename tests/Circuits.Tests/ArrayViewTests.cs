using System.Collections.Immutable;
using CsCheck;
using Xunit;

namespace Circuits.Tests;

/// <summary>Views of arrays and lists hold what LINQ's operators of the same name give.</summary>
public class ArrayViewTests
{
    [Fact]
    public void A_view_of_an_array_holds_what_LINQ_gives() => Gen.Int[-9, 9].Array[0, 12].Sample(numbers =>
    {
        var array = numbers.ToImmutableArray();
        Same(Enumerable.Select(numbers, Half), array.Select(Half), numbers.Select(Half), [.. array.Select(Half)], array.Select(Half).ToList(), array.Select(Half).ToImmutableArray());
        Same(Enumerable.Select(numbers, Sum), array.Select(Sum), [.. array.Select(Sum)], array.Select(Sum).ToList(), array.Select(Sum).ToImmutableArray());
        Same(Enumerable.Where(numbers, Odd), array.Where(Odd), [.. array.Where(Odd)], array.Where(Odd).ToList(), array.Where(Odd).ToImmutableArray());
        Same(
            Enumerable.Select(Enumerable.Where(numbers, Odd), Half), array.Where(Odd).Select(Half), [.. array.Where(Odd).Select(Half)],
            array.Where(Odd).Select(Half).ToList(), array.Where(Odd).Select(Half).ToImmutableArray());
        Same(
            Enumerable.SelectMany(numbers, number => Several(number)), array.SelectMany(Several), [.. array.SelectMany(Several)],
            array.SelectMany(Several).ToList(), array.SelectMany(Several).ToImmutableArray());
        Same(
            Enumerable.OfType<string>(Enumerable.Select(numbers, Text)), array.Select(Text).OfType<string>(), [.. array.Select(Text).OfType<string>()],
            array.Select(Text).OfType<string>().ToList(), array.Select(Text).OfType<string>().ToImmutableArray());
        Same(Enumerable.OfType<int>(Enumerable.Select(numbers, OddOrNone)), array.Select(OddOrNone).OfType<int>(), [.. array.Select(OddOrNone).OfType<int>()]);
        Assert.Equal(numbers.Length, array.Select(Half).Count);
        Assert.Equal(numbers.Length, array.Select(Sum).Count);
    });

    [Fact]
    public void A_view_of_a_list_holds_what_LINQ_gives() => Gen.Int[-9, 9].List[0, 12].Sample(numbers =>
    {
        Same(Enumerable.Select(numbers, Half), numbers.Select(Half), [.. numbers.Select(Half)]);
        Same(Enumerable.Select(numbers, Sum), numbers.Select(Sum), [.. numbers.Select(Sum)]);
        Same(Enumerable.Where(numbers, Odd), numbers.Where(Odd), [.. numbers.Where(Odd)]);
        Same(Enumerable.SelectMany(numbers, number => Several(number)), numbers.SelectMany(Several), [.. numbers.SelectMany(Several)]);
    });

    [Fact]
    public void Each_element_stands_once_where_it_comes_first() => Gen.Int[-3, 3].List[0, 12].Sample(numbers =>
    {
        var array = numbers.ToImmutableArray();
        Same(Enumerable.Distinct(numbers), numbers.Distinct());
        Same(Enumerable.Distinct(Enumerable.Select(numbers, Half)), array.Select(Half).Distinct());
        Same(Enumerable.Distinct(Enumerable.Select(Enumerable.Where(numbers, Odd), Half)), array.Where(Odd).Select(Half).Distinct());
        Same(Enumerable.Distinct(Enumerable.SelectMany(numbers, number => Several(number))), array.SelectMany(Several).Distinct());
    });

    [Fact]
    public void Nothing_is_worked_out_before_it_is_asked_for()
    {
        ImmutableArray<int> array = [1, 2, 3];
        var asked = 0;
        var view = array.Select(number => asked += number);
        Assert.Equal(0, asked);
        foreach (var sum in view)
        {
            if (sum == 3) break;
        }

        Assert.Equal(3, asked);
    }

    [Fact]
    public void Fault_A_view_of_no_array_at_all()
    {
        Assert.Throws<ArgumentNullException>(() => default(ImmutableArray<int>).Select(Half));
        Assert.Throws<ArgumentNullException>(() => default(ImmutableArray<int>).Where(Odd));
    }

    [Fact]
    public void An_empty_collection_expression_makes_an_empty_view()
    {
        ImmutableArray<int> array = [1, 2, 3];
        Assert.Empty(array.IsEmpty ? array.Select(Half) : []);
        Assert.Empty(array.IsEmpty ? array.Where(Odd) : []);
        Assert.Empty(array.IsEmpty ? array.SelectMany(Several) : []);
    }

    private static int Half(int number) => number / 2;

    private static int Sum(int number, int at) => number + at;

    private static bool Odd(int number) => number % 2 != 0;

    private static string? Text(int number) => number > 0 ? $"{number}" : null;

    private static int? OddOrNone(int number) => Odd(number) ? number : null;

    private static ImmutableArray<int> Several(int number) => [.. Enumerable.Repeat(number, Math.Abs(number) % 3)];

    private static void Same<TElement>(IEnumerable<TElement> expected, params ReadOnlySpan<IEnumerable<TElement>> views)
    {
        foreach (var view in views)
        {
            Assert.Equal(expected, view);
            Assert.Equal(expected, view); // A view can be gone through again.
        }
    }
}
