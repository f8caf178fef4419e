namespace BoothWatch.Service.Setup;

/// <summary>What may be chosen.</summary>
/// <param name="Kinds">Kinds of coat.</param>
/// <param name="Lacquers">Ids of lacquers.</param>
/// <param name="Thinners">Ids of thinners.</param>
/// <param name="Retarders">Ids of retarders.</param>
/// <param name="Substrates">Ids of substrates.</param>
public sealed record SetupChoices(
    IReadOnlyList<string> Kinds,
    IReadOnlyList<string> Lacquers,
    IReadOnlyList<string> Thinners,
    IReadOnlyList<string> Retarders,
    IReadOnlyList<string> Substrates);
