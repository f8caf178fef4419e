namespace BoothWatch.Film;

/// <summary>Kinds of coat, as the shop names them.</summary>
public enum CoatKind
{
    /// <summary>Thinner-rich coat that softens what is below so that new lacquer melts in.</summary>
    Flash,

    /// <summary>Full coat of clear lacquer.</summary>
    Clear,

    /// <summary>Full coat of tinted lacquer.</summary>
    Colour,

    /// <summary>First coat, which closes the surface.</summary>
    Sealer,
}
