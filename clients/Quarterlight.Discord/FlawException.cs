namespace Quarterlight.Discord;

/// <summary>Leaves a reader with the reason; caught by <see cref="InteractionReader"/> and nobody else.</summary>
internal sealed class FlawException(InteractionFlaw flaw) : Exception
{
    /// <summary>The reason.</summary>
    public InteractionFlaw Flaw { get; } = flaw;
}
