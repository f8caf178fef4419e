using BoothWatch.Air;

namespace BoothWatch.Checks;

/// <summary>The relative humidity over the saturated solution of a salt in a closed jar: a fixed point that anybody can make.</summary>
/// <remarks>
/// <para>RH(t) = a0 + a1 t + a2 t² + a3 t³, with RH in % over water, t in °C, a_i in %/°C^i. Range 0 to 50 °C; outside it nothing is
/// given. The source goes further for each of these salts, but no shop does.</para>
/// <para>Source: L. Greenspan, Humidity fixed points of binary saturated aqueous solutions, J. Res. NBS 81A (1977) 89 to 96,
/// doi 10.6028/jres.081A.011 (from memory); its stated uncertainties stand in a table by 5 °C, between which a straight line is taken. The linear term
/// of lithium chloride is +0.00824245: copies with a minus sign are about, and give 10.9 % instead of 11.3 % at 25 °C.</para>
/// <para>Worked values at 25 °C: lithium chloride 11.30, magnesium chloride 32.78, sodium chloride 75.29, potassium chloride 84.34 %.
/// The source cuts its figures after the second digit.</para>
/// </remarks>
public sealed class SaltPoint
{
    /// <summary>Lowest temperature for which a humidity is given, °C.</summary>
    public const double LowestC = 0;

    /// <summary>Highest temperature for which a humidity is given, °C.</summary>
    public const double HighestC = 50;

    private const double TableStepC = 5;

    /// <summary>Lithium chloride, about 11 %. The fixed point nearest to a dry winter; corrosive to metal, and harmful if swallowed.</summary>
    public static readonly SaltPoint LithiumChloride = new(
        "lithium-chloride", "lithium chloride", "LiCl",
        [11.2323, 0.00824245, -0.214890e-3, 0],
        [0.54, 0.47, 0.41, 0.35, 0.31, 0.27, 0.24, 0.22, 0.21, 0.21, 0.22]);

    /// <summary>Magnesium chloride, about 33 %.</summary>
    public static readonly SaltPoint MagnesiumChloride = new(
        "magnesium-chloride", "magnesium chloride", "MgCl2",
        [33.6686, -0.00797397, -0.108988e-2, 0],
        [0.33, 0.28, 0.24, 0.21, 0.18, 0.16, 0.14, 0.13, 0.13, 0.13, 0.14]);

    /// <summary>Sodium chloride, table salt without additives, about 75 %: the point nearest to where lacquer begins to blush.</summary>
    public static readonly SaltPoint SodiumChloride = new(
        "sodium-chloride", "sodium chloride", "NaCl",
        [75.5164, 0.0398321, -0.265459e-2, 0.2848e-4],
        [0.34, 0.27, 0.22, 0.18, 0.14, 0.12, 0.11, 0.12, 0.13, 0.16, 0.19]);

    /// <summary>Potassium chloride, about 84 %.</summary>
    public static readonly SaltPoint PotassiumChloride = new(
        "potassium-chloride", "potassium chloride", "KCl",
        [88.6190, -0.193340, 0.899706e-3, 0],
        [0.53, 0.45, 0.39, 0.33, 0.29, 0.26, 0.25, 0.25, 0.25, 0.28, 0.31]);

    /// <summary>All of them, the driest first.</summary>
    public static readonly IReadOnlyList<SaltPoint> All = [LithiumChloride, MagnesiumChloride, SodiumChloride, PotassiumChloride];

    private readonly double[] _coefficients;
    private readonly double[] _uncertaintiesPct;

    private SaltPoint(string id, string name, string formula, double[] coefficients, double[] uncertaintiesPct) =>
        (Id, Name, Formula, _coefficients, _uncertaintiesPct) = (id, name, formula, coefficients, uncertaintiesPct);

    /// <summary>Stable name, kebab-case, for example <c>sodium-chloride</c>.</summary>
    public string Id { get; }

    /// <summary>Name for people.</summary>
    public string Name { get; }

    /// <summary>Chemical formula in plain letters, for example <c>MgCl2</c>.</summary>
    public string Formula { get; }

    /// <summary>The salt of an id; null when there is none.</summary>
    public static SaltPoint? Find(string? id) => All.FirstOrDefault(salt => salt.Id == id);

    /// <summary>Relative humidity over the solution, %.</summary>
    /// <param name="temperatureC">Temperature of the solution, <see cref="LowestC"/> to <see cref="HighestC"/> °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is out of range.</exception>
    public double HumidityPct(double temperatureC)
    {
        Require.InRange(temperatureC, LowestC, HighestC, "°C");
        return ((((_coefficients[3] * temperatureC) + _coefficients[2]) * temperatureC) + _coefficients[1]) * temperatureC + _coefficients[0];
    }

    /// <summary>How the humidity changes with the temperature of the whole jar, % a °C.</summary>
    /// <param name="temperatureC">Temperature of the solution, <see cref="LowestC"/> to <see cref="HighestC"/> °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is out of range.</exception>
    public double SlopePctPerC(double temperatureC)
    {
        Require.InRange(temperatureC, LowestC, HighestC, "°C");
        return ((((3 * _coefficients[3]) * temperatureC) + (2 * _coefficients[2])) * temperatureC) + _coefficients[1];
    }

    /// <summary>The uncertainty that the source states, ± % of relative humidity. It gives no coverage factor with the table.</summary>
    /// <param name="temperatureC">Temperature of the solution, <see cref="LowestC"/> to <see cref="HighestC"/> °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is out of range.</exception>
    public double UncertaintyPct(double temperatureC)
    {
        Require.InRange(temperatureC, LowestC, HighestC, "°C");
        double place = temperatureC / TableStepC;
        int below = Math.Min((int)place, _uncertaintiesPct.Length - 2);
        return _uncertaintiesPct[below] + ((place - below) * (_uncertaintiesPct[below + 1] - _uncertaintiesPct[below]));
    }
}
