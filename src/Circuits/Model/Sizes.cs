using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>The shape of an opening, a restriction or a leak.</summary>
public abstract record Shape
{
    private Shape()
    {
    }

    /// <summary>The area, or null when no size is given.</summary>
    public abstract Area? Area { get; }

    /// <summary>A round hole.</summary>
    /// <param name="Diameter">Its diameter.</param>
    /// <param name="Text">The size as the file writes it, <c>#45</c> say.</param>
    public sealed record Hole(Length Diameter, string Text) : Shape
    {
        /// <inheritdoc/>
        public override Area? Area => Diameter.HoleArea;
    }

    /// <summary>A slot; its area is its length times its width.</summary>
    /// <param name="Width">The shorter side.</param>
    /// <param name="Length">The longer side.</param>
    public sealed record Slot(Length Width, Length Length) : Shape
    {
        /// <inheritdoc/>
        public override Area? Area => new(Width.Millimetres * Length.Millimetres);
    }

    /// <summary>Any other shape, of which only the area is known.</summary>
    /// <param name="Size">Its area.</param>
    public sealed record Cutout(Area Size) : Shape
    {
        /// <inheritdoc/>
        public override Area? Area => Size;
    }

    /// <summary>An opening whose size the file does not give.</summary>
    public sealed record Unsized : Shape
    {
        /// <summary>The one value.</summary>
        public static Unsized Instance { get; } = new();

        /// <inheritdoc/>
        public override Area? Area => null;
    }
}
