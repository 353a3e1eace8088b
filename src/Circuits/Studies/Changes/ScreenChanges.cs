using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;

namespace Circuits.Studies.Changes;

/// <summary>A change of a screen or its bypass.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Screen">The screen before.</param>
public abstract record ScreenChange(string Part, Screen Screen) : Change(Part, $"{Part}.{Screen.Name}", Screen.Place)
{
    internal override string Item => $"screen {Element}";

    internal override string FunctionIn(Assembly assembly) => $"keeps dirt of {Screen.From.Name} out of {Screen.To.Name}";

    internal override ImmutableArray<string> Claims => [$"screen {Element}"];

    internal override Revision Rewrite(Revision revision) =>
        revision with { Screens = [.. revision.Screens.Select(screen => screen.Name == Screen.Name ? After(screen) : screen)] };

    /// <summary>The screen after the change.</summary>
    /// <param name="screen">The screen before.</param>
    private protected abstract Screen After(Screen screen);
}

/// <summary>A screen's mesh is stopped up to a share, whatever it was before.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Screen">The screen before.</param>
/// <param name="Share">The share of the mesh: 0 clean, 1 shut.</param>
public sealed record ClogScreen(string Part, Screen Screen, double Share) : ScreenChange(Part, Screen)
{
    /// <inheritdoc/>
    public override Phrase Text => Share > 0
        ? Phrase.Of($"screen {Element} clogged by {new Share(Share)}")
        : Phrase.Of($"screen {Element} clean");

    private protected override Screen After(Screen screen) => screen with { Clogged = Share };
}

/// <summary>A screen's mesh is torn, or left out, and holds nothing back. What dirt then does to valves, nobody computes.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Screen">The screen before.</param>
public sealed record TearScreen(string Part, Screen Screen) : ScreenChange(Part, Screen)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"screen {Element} torn or left out");

    private protected override Screen After(Screen screen) => screen with { IsOut = true };
}

/// <summary>A screen's bypass sticks.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Screen">The screen before; it has a bypass.</param>
/// <param name="How">How it sticks.</param>
public sealed record StickBypass(string Part, Screen Screen, BypassStuck How) : ScreenChange(Part, Screen)
{
    /// <inheritdoc/>
    public override Phrase Text => Phrase.Of($"bypass of screen {Element} {StuckText.Of(How)}");

    internal override string Item => $"bypass of screen {Element}";

    internal override string FunctionIn(Assembly assembly) => $"lets {Screen.From.Name} past a clogged mesh";

    private protected override Screen After(Screen screen) => screen with { Bypass = screen.Bypass! with { Stuck = How } };
}
