using BoothWatch.Jobs;
using BoothWatch.Solvents;

namespace BoothWatch.Reviews;

/// <summary>What the shop usually sprays as a coat of this kind: what a reviewed coat is held against.</summary>
/// <param name="Cup">The cup by ids, with the retarder level of the reviewed coat.</param>
/// <param name="Mix">What that is.</param>
/// <param name="Unretarded">The same without retarder.</param>
/// <param name="WetFilmUm">Wet film, µm.</param>
/// <param name="AirSpeedMPerS">Air speed over the piece, m/s.</param>
public sealed record UsualCoat(CoatMix Cup, Mix Mix, Mix Unretarded, double WetFilmUm, double AirSpeedMPerS);
