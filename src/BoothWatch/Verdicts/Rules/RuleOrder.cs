namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// Which rule speaks first among reasons of the same limit: people before the finish, not knowing before knowing,
/// the finish before comfort. The numbers only order; <see cref="Reason.Severity"/> carries them.
/// </summary>
internal static class RuleOrder
{
    public const double PartsProved = 110;
    public const double Exhaust = 100;
    public const double BoothAir = 90;
    public const double PieceUnknown = 85;
    public const double PieceNearDewPoint = 80;
    public const double BlushMarginThatWarmingDoesNotCure = 82;
    public const double BlushMargin = 70;
    public const double FilmDoesNotSet = 60;
    public const double NoFilmAnswer = 55;
    public const double TooHot = 50;
    public const double TooCold = 45;
    public const double Clock = 40;
    public const double PieceAgainstAir = 35;
    public const double SolventTrapping = 30;
    public const double MuchRetarder = 25;
    public const double TooDry = 20;
    public const double Filter = 15;
    public const double Pressure = 10;
    public const double SpareRetarder = 5;
}
