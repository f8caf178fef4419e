namespace BoothWatch.Service.WhatIf;

/// <summary>What the page of what-if questions offers, from the shop's settings and materials.</summary>
/// <param name="TemperatureUnit">The shop's unit, C or F; the numbers here are in °C all the same.</param>
/// <param name="Kind">The kind of coat that the settings name.</param>
/// <param name="Kinds">Every kind with its usual mix.</param>
/// <param name="Thinners">Ids of thinners.</param>
/// <param name="Thinner">The shop's thinner.</param>
/// <param name="Retarders">Retarders with the highest level of each.</param>
/// <param name="Retarder">The shop's retarder.</param>
/// <param name="Substrates">Ids of substrates.</param>
/// <param name="Substrate">The shop's substrate.</param>
/// <param name="AirSpeedMPerS">The shop's air speed over the piece, m/s.</param>
/// <param name="CupMl">The shop's cup, mL of unretarded mix.</param>
internal sealed record WhatIfChoices(
    string TemperatureUnit,
    string Kind,
    IReadOnlyList<WhatIfKind> Kinds,
    IReadOnlyList<string> Thinners,
    string Thinner,
    IReadOnlyList<WhatIfRetarder> Retarders,
    string Retarder,
    IReadOnlyList<string> Substrates,
    string Substrate,
    double AirSpeedMPerS,
    double CupMl);

/// <summary>A kind of coat as the shop usually mixes and sprays it.</summary>
internal sealed record WhatIfKind(string Kind, double LacquerParts, double ThinnerParts, double WetFilmUm);

/// <summary>A retarder.</summary>
/// <param name="Id">Its id in config/materials.</param>
/// <param name="HighestPct">Highest level of the ladder, % of the unretarded mix by volume.</param>
internal sealed record WhatIfRetarder(string Id, double HighestPct);
