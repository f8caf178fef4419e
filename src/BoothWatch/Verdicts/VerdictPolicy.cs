namespace BoothWatch.Verdicts;

/// <summary>
/// The shop's limits: every number that a rule compares with, in one place. The defaults suit a solvent lacquer
/// that dries by evaporation; the data sheet of the lacquer comes first. docs/verdict.md explains each rule.
/// </summary>
public sealed record VerdictPolicy
{
    /// <summary>Name of the section in the configuration.</summary>
    public const string Section = "verdict";

    private const string Common = "common practice, no source";
    private const string OwnChoice = "own choice";

    // ---- blush ---------------------------------------------------------------------------------

    /// <summary>Blush margin wanted on top of the expanded uncertainty, °C. Default 0.5, 0 to 10.</summary>
    [PolicyLimit("°C", 0, 10, OwnChoice)]
    public double RequiredMarginC { get; init; } = 0.5;

    /// <summary>Factor from the standard to the expanded uncertainty. 1.65 covers 95 % on the one side that matters, less margin than was
    /// reckoned. Default 1.65, 1 to 3.</summary>
    [PolicyLimit("-", 1, 3, "one-sided 95 % of the normal distribution, 1.645; guard band of JCGM 106:2012 8.3")]
    public double CoverageFactor { get; init; } = 1.65;

    /// <summary>Retarder level above which a coat dries so slowly that it asks for care, % by volume of the unretarded mix. Default 10, 0 to 50.</summary>
    [PolicyLimit("%", 0, 50, Common)]
    public double SlowDownAboveRetarderPct { get; init; } = 10.0;

    /// <summary>Retarder beyond the level that serves from which BoothWatch remarks on it, percentage points. Default 5, 1 to 50.</summary>
    [PolicyLimit("%", 1, 50, Common)]
    public double SpareRetarderPct { get; init; } = 5.0;

    // ---- air -----------------------------------------------------------------------------------

    /// <summary>Relative humidity below which static gathers and overspray lands dry: slow down, %. Default 30, 0 to 60.</summary>
    [PolicyLimit("%RH", 0, 60, "NFPA 77:2000 6.4.2.1 (surfaces hold charge below about 30 %RH)")]
    public double SlowDownBelowHumidityPct { get; init; } = 30.0;

    /// <summary>Air temperature above which to slow down, °C. Default 30, 20 to 45.</summary>
    [PolicyLimit("°C", 20, 45, Common)]
    public double SlowDownAboveTemperatureC { get; init; } = 30.0;

    /// <summary>Air temperature above which to wait, °C. Default 35, 20 to 50.</summary>
    [PolicyLimit("°C", 20, 50, Common)]
    public double WaitAboveTemperatureC { get; init; } = 35.0;

    /// <summary>Air temperature below which to slow down, °C. Default 15, 5 to 25.</summary>
    [PolicyLimit("°C", 5, 25, Common)]
    public double SlowDownBelowTemperatureC { get; init; } = 15.0;

    /// <summary>Air temperature below which to wait, °C. Default 10, 0 to 20.</summary>
    [PolicyLimit("°C", 0, 20, Common)]
    public double WaitBelowTemperatureC { get; init; } = 10.0;

    // ---- piece ---------------------------------------------------------------------------------

    /// <summary>Least height of the piece above the dew point, the hard stop for a wet piece, °C. Default 3, 3 to 10: it can be raised, not lowered.</summary>
    [PolicyLimit("°C", 3, 10, "ISO 8502-4:2017")]
    public double DewClearanceC { get; init; } = 3.0;

    /// <summary>How much colder than the air the piece may be before the advice is to warm it, °C. Default 5, 1 to 20.</summary>
    [PolicyLimit("°C", 1, 20, Common)]
    public double SlowDownPieceColderC { get; init; } = 5.0;

    /// <summary>How much warmer than the air the piece may be before the advice is to let it cool, °C. Default 10, 1 to 30.</summary>
    [PolicyLimit("°C", 1, 30, Common)]
    public double SlowDownPieceWarmerC { get; init; } = 10.0;

    /// <summary>True: no piece temperature, no spray. False: a piece that no sensor looks at counts as warm as the air. Default true.</summary>
    public bool RequirePieceTemperature { get; init; } = true;

    /// <summary>Standard uncertainty of a piece that is only taken to be as warm as the air, °C. Default 2, 0.5 to 10.</summary>
    [PolicyLimit("°C", 0.5, 10, OwnChoice)]
    public double AssumedPieceUncertaintyC { get; init; } = 2.0;

    // ---- booth ---------------------------------------------------------------------------------

    /// <summary>True: exhaust without proof means wait. False: a booth without a proof of exhaust gets at most "slow down". Default true.</summary>
    public bool RequireExhaustProof { get; init; } = true;

    /// <summary>Pressure drop above which the exhaust filter counts as loaded, Pa. Default 125 (0.5 inch of water), 20 to 500.</summary>
    [PolicyLimit("Pa", 20, 500, "usual change-out resistance of booth exhaust filters, 0.5 to 0.75 inch of water; the booth's own manual comes first")]
    public double SlowDownAboveFilterDropPa { get; init; } = 125.0;

    /// <summary>Pressure drop below which, with the exhaust proven, a filter is missing or a hose is off, Pa. Default 2, 0 (off) to 20.</summary>
    [PolicyLimit("Pa", 0, 20, OwnChoice)]
    public double SlowDownBelowFilterDropPa { get; init; } = 2.0;

    // ---- time and words ------------------------------------------------------------------------

    /// <summary>How long a better verdict must hold before it is shown, s. Default 30, 1 to 900.</summary>
    [PolicyLimit("s", 1, 900, OwnChoice)]
    public double DwellS { get; init; } = 30.0;

    /// <summary>Longest gap between two assessments that still counts as holding, s. Default 5, 1 to 5: it can be lowered, not raised.</summary>
    [PolicyLimit("s", 1, 5, OwnChoice)]
    public double LongestGapS { get; init; } = 5.0;

    /// <summary>Coats of this shop that <see cref="RequiredMarginC"/> comes from; null while it is the setting. No setting of this section.</summary>
    public int? ShopCoats { get; private init; }

    /// <summary>Margin below which a coat of this shop is more likely to blush than not, °C, 0 or more; null while only the model says. No
    /// setting of this section.</summary>
    public double? ShopBlushesBelowC { get; private init; }

    /// <summary>Unit of the temperatures in reasons; no limit of the shop, so no setting of this section. Default Celsius.</summary>
    public TemperatureUnit TemperatureUnit { get; private init; }

    /// <summary>The same limits, with reasons in this unit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The unit is none.</exception>
    public VerdictPolicy SpeakingIn(TemperatureUnit unit) => Enum.IsDefined(unit)
        ? this with { TemperatureUnit = unit }
        : throw new ArgumentOutOfRangeException(nameof(unit), unit, "Give Celsius or Fahrenheit.");

    /// <summary>The same limits, with a required margin that this shop's own coats speak for.</summary>
    /// <param name="requiredMarginC">Required margin, °C.</param>
    /// <param name="blushesBelowC">Margin below which a coat of this shop is more likely to blush than not, °C, from 0 to the required margin.</param>
    /// <param name="coats">Coats that it comes from.</param>
    /// <exception cref="ArgumentOutOfRangeException">The figures cannot be a limit.</exception>
    public VerdictPolicy WithShopLimit(double requiredMarginC, double blushesBelowC, int coats)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(coats);
        return requiredMarginC is >= 0 and <= 10 && blushesBelowC >= 0 && blushesBelowC <= requiredMarginC
            ? this with { RequiredMarginC = requiredMarginC, ShopBlushesBelowC = blushesBelowC, ShopCoats = coats }
            : throw new ArgumentOutOfRangeException(nameof(requiredMarginC), requiredMarginC, "Give 0 to 10 °C, and a threshold from 0 to that.");
    }

    /// <summary>The same limits, with a required margin that somebody typed in, °C.</summary>
    public VerdictPolicy Wanting(double requiredMarginC) => this with { RequiredMarginC = requiredMarginC, ShopBlushesBelowC = null, ShopCoats = null };

    /// <summary>Margin below which the mix in the cup counts as one that blushes, °C.</summary>
    internal double BlushesBelowC() => ShopBlushesBelowC ?? 0;

    /// <summary>
    /// The least temperature at which a piece passes both of its rules, °C: clear of the dew point, and not much colder than the air.
    /// </summary>
    /// <param name="airTemperatureC">Air temperature, °C.</param>
    /// <param name="dewPointC">Dew point of the air, °C.</param>
    internal double WarmEnoughC(double airTemperatureC, double dewPointC) =>
        Math.Max(dewPointC + DewClearanceC, airTemperatureC - SlowDownPieceColderC);
}
